/** @jsxRuntime automatic */
/**
 * Rain by day as bars. A total over several days is one wide bar of its height per day, hatched; a trace a small ring, a dry
 * day a tick on the line, a day without a reading a gap with a cross: told apart without colour.
 */
export interface DayOfRain {
  /** ISO day on which it ends. */
  day: string
  /** mm; null where nobody read. */
  amountMm: number | null
  isTrace: boolean
  /** Days that the amount covers; 0 for a day within a total that ends later. */
  spanDays: number
}

interface Props {
  days: readonly DayOfRain[]
  unit: 'mm' | 'in'
  language: 'en' | 'es'
  label: string
  widthPx?: number
  heightPx?: number
  /** Where all are drawn alike, e.g. the twelve months of a year. */
  topMm?: number
}

const ink = 'var(--ink, #14211f)'

export function topOf(days: readonly DayOfRain[]): number {
  return Math.max(1, ...days.map(({ amountMm, spanDays }) => (amountMm ?? 0) / Math.max(1, spanDays)))
}

export function RainByDay({ days, unit, language, label, widthPx = 640, heightPx = 210, topMm }: Props) {
  const [left, right, top, bottom] = [36, 6, 10, 24]
  const highest = topMm ?? topOf(days)
  const perUnit = unit === 'in' ? 25.4 : 1
  const step = niceStep(highest / perUnit / 4)
  const topUnits = Math.ceil(highest / perUnit / step) * step
  const dayPx = (widthPx - left - right) / Math.max(1, days.length)
  const x = (at: number) => left + at * dayPx
  const y = (mm: number) => heightPx - bottom - (mm / perUnit / topUnits) * (heightPx - top - bottom)
  const number = new Intl.NumberFormat(language, { maximumFractionDigits: 2 })
  const every = days.length > 20 ? 5 : 1
  const base = y(0)
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      width={widthPx}
      height={heightPx}
      fontSize="11"
      fill={ink}
    >
      <defs>
        <pattern id="total" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0,0v5" stroke="#0b4f68" strokeWidth="1.6" />
        </pattern>
      </defs>
      {Array.from({ length: Math.round(topUnits / step) + 1 }, (_, k) => k * step).map((value) => (
        <g key={value}>
          <path d={`M${left},${y(value * perUnit)}H${widthPx - right}`} stroke="var(--line, #d3dad5)" />
          <text x={left - 4} y={y(value * perUnit)} textAnchor="end" dominantBaseline="central">
            {number.format(value)}
          </text>
        </g>
      ))}
      {days.map(({ day, amountMm, isTrace, spanDays }, at) => {
        const middle = x(at) + dayPx / 2
        if (amountMm === null) {
          return spanDays === 0 ? null : (
            <path key={day} d={`M${middle - 2},${base - 6}l4,4m0,-4l-4,4`} stroke={ink} strokeWidth="1" />
          )
        }
        if (spanDays > 1) {
          const from = x(Math.max(0, at - spanDays + 1))
          const high = y(amountMm / spanDays)
          return (
            <rect
              key={day}
              x={from + 1}
              y={high}
              width={x(at + 1) - from - 2}
              height={Math.max(0, base - high)}
              fill="url(#total)"
              stroke="#0b4f68"
            />
          )
        }
        if (isTrace) return <circle key={day} cx={middle} cy={base - 4} r="2" fill="none" stroke="#0b4f68" />
        if (amountMm === 0) return <path key={day} d={`M${middle},${base}v-3`} stroke={ink} />
        return (
          <rect
            key={day}
            x={x(at) + dayPx * 0.12}
            y={y(amountMm)}
            width={dayPx * 0.76}
            height={base - y(amountMm)}
            fill="#28728f"
          />
        )
      })}
      <path d={`M${left},${base}H${widthPx - right}`} stroke={ink} />
      {days.map(({ day }, at) => {
        const number0 = Number(day.slice(8))
        return number0 === 1 || number0 % every === 0 ? (
          <text key={day} x={x(at) + dayPx / 2} y={heightPx - 8} textAnchor="middle">
            {number0}
          </text>
        ) : null
      })}
    </svg>
  )
}

function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(rough, 1e-6)))
  return ([1, 2, 5, 10].find((one) => one * power >= rough) ?? 10) * power
}
