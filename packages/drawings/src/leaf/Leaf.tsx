/** @jsxRuntime automatic */
/** One observer's month or year on a page. */
import { Paper } from '../paper/Paper.tsx'
import { told } from '../siting/siteWords.ts'
import { leafWords } from './leafWords.ts'
import { amountOf, dayName, monthName, periodName } from './names.ts'
import type { DayOfRain } from './RainByDay.tsx'
import { RainFigure } from './RainFigure.tsx'

export interface LeafProps {
  language: 'en' | 'es'
  unit: 'mm' | 'in'
  network: string
  observer: string
  gauge: { name: string; code: string }
  /** `2026-05` or `2026`. */
  period: string
  days: readonly DayOfRain[]
  totalMm: number
  isTraceOnly: boolean
  wetDays: number
  wettest: { day: string; amountMm: number } | null
  /** Longest run of dry days. */
  dryDays: number
  /** Readings that still wait for a decision, by day: in the total as they were sent. */
  asked: readonly string[]
  expected: number
  answered: number
  /** Among the gauge's own complete months of this name, or years; null where there is no other, or this one is not complete. */
  rank: { place: number; of: number } | null
  /** Complete gauges of the network, and how many of them were wetter; null while the period runs. */
  among: { all: number; wetter: number } | null
  sharpened: { day: string; share: number } | null
}

export function Leaf(props: LeafProps) {
  const { language, unit, period, days, wettest, rank, among, sharpened, expected, answered } = props
  const words = leafWords[language]
  const amount = amountOf(unit, language)
  const isMonth = period.length === 7
  const name = periodName(period, language)
  const title = told(words.leaf, { period: name })
  const facts: [string, string][] = [
    [words.total, props.isTraceOnly ? 'T' : amount(props.totalMm)],
    [words.wet, String(props.wetDays)],
    [words.wettest, wettest === null ? '–' : `${amount(wettest.amountMm)}, ${dayName(wettest.day, language)}`],
    [words.dry, told(words.days, { count: String(props.dryDays) })],
    [words.answered, told(words.of, { part: String(answered), all: String(expected) })],
  ]
  return (
    <Paper language={language} title={title}>
      <h1>{title}</h1>
      <p className="small">
        {props.observer} · {told(words.gauge, { gauge: props.gauge.name, code: props.gauge.code })} · {props.network}
      </p>
      <RainFigure days={days} unit={unit} language={language} period={period} title={title} legend={words.legend} />
      <table>
        <tbody>
          {facts.map(([label, value]) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td className="number">{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {answered < expected ? <p>{told(words.incomplete, { missing: String(expected - answered) })}</p> : null}
      {props.asked.length === 0 ? null : (
        <p>{told(words.asked, { days: props.asked.map((day) => dayName(day, language)).join(', ') })}</p>
      )}
      {rank === null ? null : (
        <p>
          {told(words.rank, {
            label: isMonth ? told(words.months, { month: monthName(period, language) }) : words.years,
            place: String(rank.place),
            all: String(rank.of),
          })}
        </p>
      )}
      {among === null ? null : <p>{told(words.network, { all: String(among.all), wetter: String(among.wetter) })}</p>}
      <h2>{words.helped}</h2>
      <p>
        {sharpened === null
          ? ''
          : `${told(words.sharpened, { day: dayName(sharpened.day, language), share: `${Math.round(sharpened.share * 100)} %` })} `}
        {words.always} {words.thanks}
      </p>
      <p className="caution">{words.caution}</p>
    </Paper>
  )
}
