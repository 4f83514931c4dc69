import type { DayEvidence } from '@gaugewright/contract'
import { useWidth } from '../../hooks/useWidth.ts'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './DaysAroundChart.module.css'

const heightPx = 128
const top = 20
const bottom = 98

/** Reported and expected on the days around, on one square-root axis; the amounts stand in words for screen readers. */
export function DaysAroundChart({ evidence, lastDay }: { evidence: DayEvidence; lastDay: string }) {
  const { words, format } = useWords()
  const [frame, widthPx] = useWidth<HTMLDivElement>(380)
  const days = evidence.daysAround.filter(({ day }) => day <= lastDay)
  const maxMm = days.reduce((most, d) => Math.max(most, d.reportedMm ?? 0, d.expectedP90Mm), format.stepMm * 10)
  const y = (mm: number) => bottom - (bottom - top) * Math.sqrt(Math.max(0, mm) / maxMm)
  const step = widthPx / Math.max(1, days.length)
  const reported = (mm: number | null) => (mm === null ? words.noAmount : format.mm(mm))
  const spoken = days
    .map(
      (d) =>
        `${format.dayShort(d.day)}: ${words.daysReported} ${reported(d.reportedMm)}, ${fill(words.expectedRange, { low: format.bare(d.expectedP10Mm), high: format.mm(d.expectedP90Mm) })}`,
    )
    .join('; ')
  return (
    <figure ref={frame} className={styles.figure}>
      <svg width={widthPx} height={heightPx} role="img" aria-label={`${words.daysChart}. ${spoken}`}>
        <path className={styles.axis} d={`M0 ${bottom}H${widthPx}`} />
        {days.map((d, i) => {
          const x = (i + 0.5) * step
          const isThis = d.day === evidence.day
          return (
            <g key={d.day}>
              {isThis ? (
                <rect className={styles.today} x={i * step + 1} y={2} width={step - 2} height={heightPx - 4} rx="4" />
              ) : null}
              <rect
                className={styles.band}
                x={x - 9}
                y={y(d.expectedP90Mm)}
                width="18"
                height={Math.max(1.5, y(d.expectedP10Mm) - y(d.expectedP90Mm))}
              />
              <path className={styles.median} d={`M${x - 9} ${y(d.expectedP50Mm)}h18`} />
              {d.reportedMm === null ? (
                <path className={styles.missing} d={`M${x - 4} ${bottom - 5}l8 -8m0 8l-8 -8`} />
              ) : (
                <>
                  <circle className={styles.reported} cx={x} cy={y(d.reportedMm)} r="4.2" />
                  <text x={x} y={y(d.reportedMm) - 8} textAnchor="middle" className={styles.value}>
                    {format.bare(d.reportedMm)}
                  </text>
                </>
              )}
              <text x={x} y={bottom + 15} textAnchor="middle" className={isThis ? styles.strong : ''}>
                {format.dayTiny(d.day)}
              </text>
            </g>
          )
        })}
      </svg>
      <figcaption>
        <span className={styles.keyDot} aria-hidden="true" /> {words.daysReported}{' '}
        <span className={styles.keyBand} aria-hidden="true" /> {words.daysExpected} ({format.unitName})
      </figcaption>
    </figure>
  )
}
