import styles from './BarChart.module.css'

export interface Bar {
  label: string
  /** 0 is a dry day, null a day without a reading. */
  value: number | null
  /** Part of the bar drawn darker. */
  part?: number
  isTrace?: boolean
}

type Props = { bars: readonly Bar[]; label: string; everyLabel?: number; top: string }

const height = 110

/** Bars from zero on one scale; a dry day is a hollow ring, a day that was not read a small cross. */
export function BarChart({ bars, label, everyLabel = 1, top }: Props) {
  const largest = Math.max(1e-9, ...bars.map(({ value }) => value ?? 0))
  const step = 320 / bars.length
  const width = Math.min(34, step * 0.72)
  return (
    <svg viewBox="0 0 324 150" className={styles.chart} role="img" aria-label={label}>
      <text x="2" y="11" className={styles.text}>
        {top}
      </text>
      <path className={styles.line} d={`M2 ${height + 18} H322`} />
      {bars.map((bar, index) => {
        const middle = 2 + step * (index + 0.5)
        const tall = ((bar.value ?? 0) / largest) * height
        const part = ((bar.part ?? 0) / largest) * height
        return (
          <g key={bar.label}>
            {bar.value === null ? (
              <path className={styles.cross} d={`M${middle - 2} ${height + 11} l4 4 m0 -4 l-4 4`} />
            ) : tall === 0 ? (
              <circle className={bar.isTrace ? styles.trace : styles.ring} cx={middle} cy={height + 13} r="2.4" />
            ) : (
              <rect className={styles.bar} x={middle - width / 2} width={width} y={height + 18 - tall} height={tall} />
            )}
            {part > 0 ? (
              <rect className={styles.part} x={middle - width / 2} width={width} y={height + 18 - part} height={part} />
            ) : null}
            {index % everyLabel === 0 ? (
              <text x={middle} y={height + 33} className={styles.under}>
                {bar.label}
              </text>
            ) : null}
          </g>
        )
      })}
    </svg>
  )
}
