import type { WhatIf } from '@gaugewright/contract'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { areaEffects } from './todayView.ts'
import styles from './WhatIfPanel.module.css'

const shownAreas = 4

type Props = { whatIf: WhatIf; isShown: boolean; onShow: (shown: boolean) => void }

/** How far the map moves, and the county means that change most, before and after. */
export function WhatIfMap({ whatIf, isShown, onShow }: Props) {
  const { words, format } = useWords()
  const { before, after, meanAbsoluteChangeMm } = whatIf
  if (meanAbsoluteChangeMm === 0) return <p className={styles.note}>{words.whatIf.mapStays}</p>
  const effects = areaEffects(before.areas, after.areas, 0).filter(
    ({ beforeMm, afterMm }) => format.bare(beforeMm) !== format.bare(afterMm),
  )
  const amount = `${format.number(meanAbsoluteChangeMm / (format.unit === 'in' ? 25.4 : 1), format.unit === 'in' ? 3 : 2)} ${format.unitName}`
  return (
    <>
      <div className={styles.head}>
        <p className={styles.note}>
          {fill(words.whatIf.mapMoves, { amount })}{' '}
          {effects.length === 0 ? fill(words.whatIf.noArea, { amount: format.mm(format.stepMm) }) : null}
        </p>
        <Button aria-pressed={isShown} aria-keyshortcuts="w" hint="W" onClick={() => onShow(!isShown)}>
          {isShown ? words.whatIf.hideOnMap : words.whatIf.showOnMap}
        </Button>
      </div>
      {effects.length > 0 ? (
        <table className={styles.areas}>
          <thead>
            <tr>
              <th scope="col">{words.columns.area}</th>
              <th scope="col">
                {words.whatIf.before}, {format.unitName}
              </th>
              <th scope="col">
                {words.whatIf.after}, {format.unitName}
              </th>
            </tr>
          </thead>
          <tbody>
            {effects.slice(0, shownAreas).map((effect) => (
              <tr key={effect.name}>
                <th scope="row">{effect.name}</th>
                <td>{format.bare(effect.beforeMm)}</td>
                <td>
                  <b>{format.bare(effect.afterMm)}</b>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
    </>
  )
}
