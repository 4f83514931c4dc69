import { useId } from 'react'
import { useWidth } from '../../hooks/useWidth.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './HabitPlots.module.css'
import type { HabitPlot } from './habitPlots.ts'

const heightPx = 132
const topPx = 20
const bottomPx = 96

type Props = { plot: HabitPlot & { kind: 'bars' } }

/** A small bar plot; ticks across the bars say what would be usual. In words for those who do not see it. */
export function BarPlot({ plot }: Props) {
  const { words } = useWords()
  const [frame, widthPx] = useWidth<HTMLElement>(380)
  const titleId = useId()
  const { bars, usual } = plot
  const most = Math.max(1e-9, ...bars.flatMap((bar) => [bar.value + (bar.error ?? 0), bar.expected ?? 0]))
  const y = (value: number) => bottomPx - ((bottomPx - topPx) * Math.max(0, value)) / most
  const step = widthPx / Math.max(1, bars.length)
  const half = Math.min(16, 0.36 * step)
  const spoken = bars.map(({ spoken: name, shown, expected }) =>
    expected === null || usual === null ? `${name}: ${shown}` : `${name}: ${shown} (${usual} ${Math.round(expected)})`,
  )
  return (
    <figure ref={frame} className={styles.figure}>
      <p id={titleId} className={styles.title}>
        {plot.title}
      </p>
      <svg width={widthPx} height={heightPx} role="img" aria-label={`${plot.title}: ${spoken.join('; ')}`}>
        <path className={styles.axis} d={`M0 ${bottomPx}H${widthPx}`} />
        {bars.map((bar, k) => {
          const x = (k + 0.5) * step
          return (
            <g key={bar.label}>
              <rect
                className={bar.isStrong ? styles.strong : styles.bar}
                x={x - half}
                y={y(bar.value)}
                width={2 * half}
                height={Math.max(1, bottomPx - y(bar.value))}
              />
              {bar.expected === null ? null : (
                <path className={styles.expected} d={`M${x - half - 3} ${y(bar.expected)}H${x + half + 3}`} />
              )}
              {bar.error === null ? null : (
                <path
                  className={styles.whisker}
                  d={`M${x} ${y(bar.value - bar.error)}V${y(bar.value + bar.error)}m-4 0h8`}
                />
              )}
              <text
                className={styles.value}
                x={x}
                y={y(Math.max(bar.value + (bar.error ?? 0), bar.expected ?? 0)) - 5}
                textAnchor="middle"
              >
                {bar.shown}
              </text>
              <text className={bar.isStrong ? styles.strongLabel : ''} x={x} y={bottomPx + 15} textAnchor="middle">
                {bar.label}
              </text>
            </g>
          )
        })}
        <text x={widthPx / 2} y={bottomPx + 31} textAnchor="middle">
          {plot.axis}
        </text>
      </svg>
      {usual === null && plot.note === null ? null : (
        <figcaption>
          {usual === null ? null : (
            <>
              <span className={styles.keyBar} aria-hidden="true" /> {words.gauges.own}{' '}
              <span className={styles.keyTick} aria-hidden="true" /> {usual}
            </>
          )}
          {plot.note}
        </figcaption>
      )}
    </figure>
  )
}
