/** @jsxRuntime automatic */
/** Rain by day of a month, or of the twelve months of a year, all drawn to one height. */
import { periodName } from './names.ts'
import { type DayOfRain, RainByDay, topOf } from './RainByDay.tsx'

interface Props {
  days: readonly DayOfRain[]
  unit: 'mm' | 'in'
  language: 'en' | 'es'
  /** `2026-05` or `2026`. */
  period: string
  title: string
  legend: string
}

export function RainFigure({ days, unit, language, period, title, legend }: Props) {
  const isMonth = period.length === 7
  return isMonth ? (
    <figure>
      <RainByDay days={days} unit={unit} language={language} label={title} />
      <figcaption>
        {unit}. {legend}
      </figcaption>
    </figure>
  ) : (
    <figure>
      <div style={{ display: 'grid', gridTemplateColumns: 'repeat(3, 1fr)', gap: '2mm 3mm' }}>
        {monthsOf(days).map(([month, own]) => (
          <div key={month}>
            <p className="small">{periodName(month, language)}</p>
            <RainByDay
              days={own}
              unit={unit}
              language={language}
              label={periodName(month, language)}
              widthPx={210}
              heightPx={105}
              topMm={topOf(days)}
            />
          </div>
        ))}
      </div>
      <figcaption>
        {unit}. {legend}
      </figcaption>
    </figure>
  )
}

function monthsOf(days: readonly DayOfRain[]): [string, DayOfRain[]][] {
  const months = new Map<string, DayOfRain[]>()
  for (const one of days) months.set(one.day.slice(0, 7), [...(months.get(one.day.slice(0, 7)) ?? []), one])
  return [...months]
}
