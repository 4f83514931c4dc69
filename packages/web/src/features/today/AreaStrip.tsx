import type { AreaMean } from '@gaugewright/contract'
import { useId } from 'react'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AreaStrip.module.css'

type Props = { areas: readonly AreaMean[]; after: readonly AreaMean[] | null }

/** County means under the map, each with its central 80 %; with a what-if shown, what they would become. */
export function AreaStrip({ areas, after }: Props) {
  const { words, format } = useWords()
  const id = useId()
  if (areas.length === 0) return null
  const then = new Map(after?.map((area) => [area.name, format.bare(area.meanMm)]))
  return (
    <section className={styles.strip} aria-labelledby={id}>
      <h3 id={id}>
        {words.areaHeading}, {format.unitName}
      </h3>
      <dl>
        {areas.map((area) => {
          const now = format.bare(area.meanMm)
          const next = then.get(area.name)
          return (
            <div key={area.name}>
              <dt>{area.name}</dt>
              <dd>
                <b>{now}</b>{' '}
                {next !== undefined && next !== now ? (
                  <b className={styles.next}>→ {next}</b>
                ) : (
                  <small>
                    {format.bare(area.p10Mm)}–{format.bare(area.p90Mm)}
                  </small>
                )}
              </dd>
            </div>
          )
        })}
      </dl>
    </section>
  )
}
