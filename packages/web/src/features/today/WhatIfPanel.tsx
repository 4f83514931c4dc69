import type { WhatIf } from '@gaugewright/contract'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { areaEffects } from './todayView.ts'
import styles from './WhatIfPanel.module.css'

type Props = { whatIf: WhatIf | null; isShown: boolean; onShow: (shown: boolean) => void }

/** What the proposal would do: how far the map moves, and the county means before and after. */
export function WhatIfPanel({ whatIf, isShown, onShow }: Props) {
  const { words, format } = useWords()
  if (!whatIf) return <p className={styles.note}>{words.loading}</p>
  const effects = areaEffects(whatIf.before.areas, whatIf.after.areas, 0).filter(
    ({ beforeMm, afterMm }) => format.bare(beforeMm) !== format.bare(afterMm),
  )
  return (
    <div className={styles.panel}>
      {effects.length > 0 ? (
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">{words.columns.area}</th>
              <th scope="col">{words.before}</th>
              <th scope="col">{words.after}</th>
            </tr>
          </thead>
          <tbody>
            {effects.slice(0, 4).map((effect) => (
              <tr key={effect.name}>
                <th scope="row">{effect.name}</th>
                <td>{format.mm(effect.beforeMm)}</td>
                <td>
                  <b>{format.mm(effect.afterMm)}</b>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : (
        <p className={styles.note}>{fill(words.whatIfNone, { amount: format.mm(format.stepMm) })}</p>
      )}
      <div className={styles.foot}>
        <p className={styles.note}>
          {fill(words.whatIfMoves, {
            amount: `${format.number(whatIf.meanAbsoluteChangeMm / (format.unit === 'in' ? 25.4 : 1), format.unit === 'in' ? 3 : 2)} ${format.unitName}`,
          })}
        </p>
        <Button aria-pressed={isShown} aria-keyshortcuts="w" hint="W" onClick={() => onShow(!isShown)}>
          {isShown ? words.whatIfHide : words.whatIfShow}
        </Button>
      </div>
    </div>
  )
}
