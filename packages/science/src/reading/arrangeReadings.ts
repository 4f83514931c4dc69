/**
 * One gauge's readings laid over its observing days: what covers each day, and every overlap, gap, repeat and total
 * explained. Nothing is mended here; a disputed day waits for a decision. Corrected readings must be left out before
 * (the ledger gives current ones). Shapes are in arrangement.ts.
 */
import { ScienceError } from '../error.ts'
import type { Arrangement, ArrangementNote, DayCover } from './arrangement.ts'
import { type EpochDay, epochDayFromIso, isoFromEpochDay } from './epochDay.ts'
import { notesOnIntervals } from './notesOnIntervals.ts'
import type { Amount, IsoDay } from './reading.ts'

/** The part of a reading that matters here; every Reading is one. The instants may be left out. */
export interface ArrangeableReading extends Amount {
  id: string
  firstDay: IsoDay
  lastDay: IsoDay
  startsAtUtc?: string
  endsAtUtc?: string
}

/** Readings of one and the same interval, with the spans that lie inside it and in no smaller one. */
interface Span {
  first: EpochDay
  last: EpochDay
  readings: ArrangeableReading[]
  inside: Span[]
  crosses: boolean
  /** True where its days were read one by one to the same sum. */
  isRepeat: boolean
}

/**
 * @param readings n readings of one gauge, any order; ISO days that are real, first not after last
 * @param ask      the days to lay out, both included
 * @throws {ScienceError} OUT_OF_DOMAIN for a day that is not real, or a first day after a last
 * @remarks Time O(n log n + days covered).
 */
export function arrangeReadings(
  readings: readonly ArrangeableReading[],
  ask: { fromDay: IsoDay; toDay: IsoDay },
): Arrangement {
  const from = epochDayFromIso(ask.fromDay)
  const to = epochDayFromIso(ask.toDay)
  if (from > to) throw new ScienceError('OUT_OF_DOMAIN', `from ${ask.fromDay} to ${ask.toDay} holds no day`)
  const spans = spansOf(readings).filter((span) => span.last >= from && span.first <= to)
  const notes = nest(spans)
  for (const span of spans) notes.push(...notesOn(span))
  notes.push(...notesOnIntervals(spans.map((span) => span.readings[0] as ArrangeableReading)))
  const days = coverDays(spans, from, to)
  notes.push(...silences(days, spans))
  notes.sort((one, other) => compare(one.firstDay, other.firstDay) || compare(one.code, other.code))
  return { days, notes }
}

function spansOf(readings: readonly ArrangeableReading[]): Span[] {
  const spans = new Map<string, Span>()
  for (const reading of readings) {
    const first = epochDayFromIso(reading.firstDay)
    const last = epochDayFromIso(reading.lastDay)
    if (first > last) {
      throw new ScienceError(
        'OUT_OF_DOMAIN',
        `reading ${reading.id} runs from ${reading.firstDay} to ${reading.lastDay}`,
      )
    }
    const key = `${first} ${last}`
    const known = spans.get(key)
    if (known !== undefined) known.readings.push(reading)
    else spans.set(key, { first, last, readings: [reading], inside: [], crosses: false, isRepeat: false })
  }
  return [...spans.values()].sort((one, other) => one.first - other.first || other.last - one.last)
}

/** Puts each span into the smallest that holds it, and notes those that cross. */
function nest(spans: readonly Span[]): ArrangementNote[] {
  const notes: ArrangementNote[] = []
  let open: Span[] = []
  for (const span of spans) {
    open = open.filter((earlier) => earlier.last >= span.first)
    let holder: Span | null = null
    for (const earlier of open) {
      if (earlier.last >= span.last) holder = holder === null || sizeOf(earlier) <= sizeOf(holder) ? earlier : holder
      else notes.push(crossing(earlier, span))
    }
    holder?.inside.push(span)
    open.push(span)
  }
  return notes
}

function crossing(earlier: Span, later: Span): ArrangementNote {
  earlier.crosses = true
  later.crosses = true
  const readingIds: [string, string] = [idsOf(earlier)[0] ?? '', idsOf(later)[0] ?? '']
  const shared = { firstDay: isoFromEpochDay(later.first), lastDay: isoFromEpochDay(earlier.last) }
  return { code: 'TOTALS_CROSS', readingIds, dayCount: earlier.last - later.first + 1, ...shared }
}

function notesOn(span: Span): ArrangementNote[] {
  const notes: ArrangementNote[] = []
  const days = { firstDay: isoFromEpochDay(span.first), lastDay: isoFromEpochDay(span.last) }
  const [counted] = span.readings
  if (counted === undefined) return notes
  const dayCount = sizeOf(span)
  if (dayCount > 1) notes.push({ code: 'TOTAL_OVER_DAYS', readingId: counted.id, dayCount, ...days })
  const readingIds = idsOf(span)
  if (disagrees(span)) {
    const amountsUm = span.readings.map((reading) => reading.amountUm)
    const [lowestUm, highestUm] = [Math.min(...amountsUm), Math.max(...amountsUm)]
    notes.push({ code: 'READINGS_DISAGREE', readingIds, lowestUm, highestUm, ...days })
  } else if (readingIds.length > 1) notes.push({ code: 'READING_REPEATED', readingIds, ...days })
  if (span.inside.length > 0) notes.push(noteOnInside(span, counted, days))
  return notes
}

function noteOnInside(
  span: Span,
  total: ArrangeableReading,
  days: { firstDay: IsoDay; lastDay: IsoDay },
): ArrangementNote {
  const readingIds = span.inside.flatMap(idsOf)
  const insideUm = span.inside.reduce((sumUm, inner) => sumUm + (inner.readings[0]?.amountUm ?? 0), 0)
  const restUm = total.amountUm - insideUm
  const restDayCount = sizeOf(span) - daysHeld(span)
  if (restUm < 0) return { code: 'TOTAL_BELOW_READINGS', totalId: total.id, readingIds, shortUm: -restUm, ...days }
  span.isRepeat = restUm === 0 && restDayCount === 0 && !disagrees(span) && !span.inside.some(isDoubtful)
  if (span.isRepeat) return { code: 'TOTAL_REPEATS_DAYS', totalId: total.id, readingIds, ...days }
  return { code: 'TOTAL_HOLDS_READINGS', totalId: total.id, readingIds, restUm, restDayCount, ...days }
}

function coverDays(spans: readonly Span[], from: EpochDay, to: EpochDay): DayCover[] {
  const covering: Span[][] = Array.from({ length: to - from + 1 }, () => [])
  for (const span of spans) {
    for (let day = Math.max(from, span.first); day <= Math.min(to, span.last); day++) covering[day - from]?.push(span)
  }
  return covering.map((over, index) => {
    const day = isoFromEpochDay(from + index)
    const readingIds = over.flatMap(idsOf)
    const counted = over.filter((span) => !span.isRepeat)
    const [only] = counted
    if (only === undefined) return { day, state: 'silent', readingIds, countedId: null }
    if (counted.length > 1 || isDoubtful(only)) return { day, state: 'disputed', readingIds, countedId: null }
    const state = sizeOf(only) === 1 ? 'read' : 'in total'
    return { day, state, readingIds, countedId: only.readings[0]?.id ?? null }
  })
}

function silences(days: readonly DayCover[], spans: readonly Span[]): ArrangementNote[] {
  const notes: ArrangementNote[] = []
  const byFirstDay = new Map(spans.map((span) => [isoFromEpochDay(span.first), span]))
  for (let index = 0; index < days.length; index++) {
    if (days[index]?.state !== 'silent') continue
    const start = index
    while (days[index + 1]?.state === 'silent') index++
    const [firstDay, lastDay] = [days[start]?.day ?? '', days[index]?.day ?? '']
    const nextDay = days[index + 1]?.day ?? null
    const next = nextDay === null ? undefined : byFirstDay.get(nextDay)
    const nextReadingId = next?.readings[0]?.id ?? null
    notes.push({ code: 'DAYS_SILENT', dayCount: index - start + 1, nextReadingId, nextDay, firstDay, lastDay })
  }
  return notes
}

function isDoubtful(span: Span): boolean {
  return span.crosses || disagrees(span)
}

function disagrees({ readings }: Span): boolean {
  const [first] = readings
  return readings.some(({ amountUm, isTrace }) => amountUm !== first?.amountUm || isTrace !== first.isTrace)
}

function daysHeld(span: Span): number {
  const held = new Set<EpochDay>()
  for (const inner of span.inside) for (let day = inner.first; day <= inner.last; day++) held.add(day)
  return held.size
}

function idsOf(span: Span): string[] {
  return span.readings.map((reading) => reading.id)
}

function sizeOf(span: Span): number {
  return span.last - span.first + 1
}

function compare(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0
}
