/** What the Urgent screen says of a report, in the reader's words and units. Pure. */
import type { UrgentItem, UrgentSeen } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import type { WordsInUse } from '../../words/WordsContext.tsx'

type In = Pick<WordsInUse, 'words' | 'format'>

const mpsPerMph = 0.44704
const mpsPerKmPerH = 1 / 3.6

/** A stone's size: hundredths of an inch, or whole millimetres. */
export function sizeText(diameterMm: number, { format }: In): string {
  if (format.unit === 'in') return `${format.number(diameterMm / 25.4, 2)} ${format.unitName}`
  return `${format.number(diameterMm, 0)} ${format.unitName}`
}

export function speedText(mps: number, { format }: In): string {
  if (format.unit === 'in') return `${format.number(mps / mpsPerMph, 0)} mph`
  return `${format.number(mps / mpsPerKmPerH, 0)} km/h`
}

/** The thing itself, short: `Hail 1.75 in, as a golf ball`. */
export function whatText(seen: UrgentSeen, own: In): string {
  const { words, format } = own
  const kind = words.urgent.kinds[seen.kind]
  switch (seen.kind) {
    case 'hail': {
      const { diameterMm, object } = seen.largest
      const size = sizeText(diameterMm, own)
      return `${kind} ${object === null ? size : fill(words.urgent.sizeAs, { size, object: words.urgent.objects[object] })}`
    }
    case 'rain':
      return `${kind} ${fill(words.urgent.overMinutes, { amount: format.um(seen.amountUm), minutes: seen.minutes })}`
    case 'snow':
      return `${kind} ${fill(words.urgent.overMinutes, { amount: format.mm(seen.depthMm), minutes: seen.minutes })}`
    case 'wind':
      if (seen.gustMps === null) return `${kind}: ${words.urgent.damageOnly}`
      return `${kind}, ${fill(words.urgent.gust, { speed: speedText(seen.gustMps, own) })}`
    case 'flooding':
      return `${kind}: ${waterText(seen, own)}`
  }
}

export function waterText(seen: Extract<UrgentSeen, { kind: 'flooding' }>, { words }: In): string {
  const { things, depths, rising, fast } = words.urgent
  return [
    ...seen.things.map((thing) => things[thing]),
    ...(seen.depth === null ? [] : [depths[seen.depth]]),
    ...(seen.isRising === true ? [rising] : []),
    ...(seen.isFast === true ? [fast] : []),
  ].join(', ')
}

export function placeText({ gauge, report }: Pick<UrgentItem, 'gauge' | 'report'>, { words }: In): string {
  if (gauge !== null) return fill(words.urgent.atGauge, { name: gauge.name, code: gauge.code })
  return (report.where.kind === 'place' ? report.where.name : null) ?? words.urgent.unnamedPlace
}

export function agoText(fromUtc: string, nowMs: number, { words }: In): string {
  const { ago } = words.urgent
  const minutes = Math.max(0, Math.floor((nowMs - Date.parse(fromUtc)) / 60_000))
  if (minutes < 1) return ago.now
  if (minutes < 60) return fill(ago.minutes, { count: minutes })
  if (minutes < 48 * 60) return fill(ago.hours, { count: Math.floor(minutes / 60) })
  return fill(ago.days, { count: Math.floor(minutes / 1440) })
}

/** A stretch of time: `42 s`, `3 min 5 s`, `2 h 10 min`; null is not yet. */
export function stretchText(seconds: number | null, { words }: In): string {
  const own = words.urgent
  if (seconds === null) return own.notYet
  const whole = Math.round(seconds)
  if (whole < 60) return fill(own.seconds, { count: whole })
  const minutes = Math.floor(whole / 60)
  if (minutes < 60) return fill(own.minutesSeconds, { minutes, seconds: whole % 60 })
  return fill(own.hoursMinutes, { hours: Math.floor(minutes / 60), minutes: minutes % 60 })
}

export function oddsText({ plausibility }: UrgentItem, { words, format }: In): string {
  const { odds, priorOdds, near, inFavour, nearestKm } = plausibility
  if (near === 0) return fill(words.urgent.oddsAlone, { percent: format.percent(odds) })
  return fill(words.urgent.oddsNear, {
    percent: format.percent(odds),
    prior: format.percent(priorOdds),
    favour: inFavour,
    near,
    distance: format.distance(1000 * (nearestKm ?? 0)),
  })
}

export function newCountText(count: number, { words }: In): string {
  const { none, one, more } = words.urgent.newCount
  return count === 0 ? none : count === 1 ? one : fill(more, { count })
}

/** The last thing done that may be taken back: what has gone out may not. */
export function lastUndoable({ closed, passedOn, seenBy }: UrgentItem): string | null {
  if (closed !== null) return closed.eventId
  const passed = passedOn.at(-1)
  if (passed !== undefined) return passed.way === 'copied' ? passed.eventId : null
  return seenBy.at(-1)?.eventId ?? null
}

/** The neighbour in the list, stopping at its ends. */
export function stepFrom(items: readonly UrgentItem[], id: string | null, step: 1 | -1): string | null {
  if (items.length === 0) return null
  const at = items.findIndex(({ report }) => report.id === id)
  const next = at === -1 ? 0 : Math.min(items.length - 1, Math.max(0, at + step))
  return items[next]?.report.id ?? null
}
