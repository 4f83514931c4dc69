/** @jsxRuntime automatic */
/** The network's month or year, for all observers. */
import { Paper } from '../paper/Paper.tsx'
import { told } from '../siting/siteWords.ts'
import { leafWords } from './leafWords.ts'
import { amountOf, dayName, periodName } from './names.ts'
import type { DayOfRain } from './RainByDay.tsx'
import { RainFigure } from './RainFigure.tsx'

export interface NetworkLetterProps {
  language: 'en' | 'es'
  unit: 'mm' | 'in'
  network: string
  period: string
  words: string
  readings: number
  observers: number
  answeredShare: number
  /** Means over the gauges. */
  days: readonly DayOfRain[]
  /** Gauges with hardly a gap: place as a share of the map's frame, x to the east and y to the north, 0 to 1. */
  totals: { name: string; totalMm: number; x: number; y: number }[]
  quartersMm: [number, number] | null
  storm: { day: string; meanMm: number; count: number; mostMm: number; at: string } | null
  fresh: { count: number; names: string[] }
  anniversaries: string[]
}

const MAP_PX = { month: 420, year: 270 } as const

export function NetworkLetter(props: NetworkLetterProps) {
  const { language, unit, totals, storm, quartersMm, fresh, anniversaries } = props
  const words = leafWords[language]
  const mapPx = MAP_PX[props.period.length === 7 ? 'month' : 'year']
  const amount = amountOf(unit, language)
  const title = told(words.letter, { period: periodName(props.period, language) })
  const sorted = [...totals].sort((a, b) => b.totalMm - a.totalMm)
  const [most, least] = [sorted[0], sorted.at(-1)]
  return (
    <Paper language={language} title={title}>
      <h1>{title}</h1>
      <p className="small">{props.network}</p>
      {props.words
        .split(/\n\s*\n/)
        .map((paragraph) => (paragraph.trim() === '' ? null : <p key={paragraph}>{paragraph}</p>))}
      <p>
        {told(words.readings, {
          count: new Intl.NumberFormat(language).format(props.readings),
          observers: String(props.observers),
          share: `${Math.round(props.answeredShare * 100)} %`,
        })}
      </p>
      <RainFigure
        days={props.days}
        unit={unit}
        language={language}
        period={props.period}
        title={words.mean}
        legend={words.meanLegend}
      />
      {storm === null ? null : (
        <p>
          {told(words.storm, {
            day: dayName(storm.day, language),
            mean: amount(storm.meanMm),
            count: String(storm.count),
            most: amount(storm.mostMm),
            at: storm.at,
          })}
        </p>
      )}
      <h2>{words.highest}</h2>
      {most === undefined || least === undefined || quartersMm === null ? (
        <p>{words.none}</p>
      ) : (
        <>
          <p>
            {told(words.highestText, {
              count: String(totals.length),
              most: amount(most.totalMm),
              mostAt: most.name,
              least: amount(least.totalMm),
              leastAt: least.name,
              low: amount(quartersMm[0]),
              high: amount(quartersMm[1]),
            })}
          </p>
          <figure>
            <svg
              role="img"
              aria-label={words.map}
              viewBox={`0 0 ${mapPx} ${mapPx * 0.7}`}
              width={mapPx}
              height={mapPx * 0.7}
            >
              <rect width={mapPx} height={mapPx * 0.7} fill="none" stroke="#8a949e" />
              {sorted.map(({ name, totalMm, x, y }) => (
                <circle
                  key={`${name} ${x} ${y}`}
                  cx={12 + x * (mapPx - 24)}
                  cy={mapPx * 0.7 - 12 - y * (mapPx * 0.7 - 24)}
                  r={(mapPx / MAP_PX.month) * (1.5 + 9 * Math.sqrt(totalMm / Math.max(1, most.totalMm)))}
                  fill="#28728f"
                  fillOpacity="0.55"
                  stroke="#0b2f40"
                  strokeWidth="0.6"
                />
              ))}
            </svg>
            <figcaption>{words.map}</figcaption>
          </figure>
        </>
      )}
      {fresh.count > 0 ? (
        <p>
          {fresh.names.length > 0
            ? told(words.fresh, { names: fresh.names.join(', ') })
            : told(words.freshCount, { count: String(fresh.count) })}
        </p>
      ) : null}
      {anniversaries.length > 0 ? <p>{told(words.anniversaries, { names: anniversaries.join(', ') })}</p> : null}
      <p>{words.thanks}</p>
      <p className="caution">{words.caution}</p>
    </Paper>
  )
}
