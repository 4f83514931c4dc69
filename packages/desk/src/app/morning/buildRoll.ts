/**
 * The roll of an observing day: every gauge expected, and its answer. A zero is an answer; silence is not a zero.
 * Pure: what is loaded and judged comes in.
 */
import type { RollRow } from '@gaugewright/contract'
import type { Decision, IsoDay, Reading } from '@gaugewright/science'
import { epochDayFromIso } from '@gaugewright/science'
import type { Absence, Gauge } from '../../ports/ledger.ts'
import type { AcceptedReading } from './acceptedRecord.ts'

export interface RollAsk {
  day: IsoDay
  gauges: readonly Gauge[]
  /** Current readings of the days around, whichever day they end on. */
  readings: readonly Reading[]
  accepted: readonly AcceptedReading[]
  decisions: ReadonlyMap<string, Decision>
  absences: readonly Absence[]
  /** By reading id; a reading that is not compared has none. */
  odds: ReadonlyMap<string, { standsOdds: number }>
  /** A reading whose interval ends after this instant (ms since 1970) was read late. */
  lateAfterMs: number
}

/** One row per gauge expected, ordered by code. */
export function buildRoll(ask: RollAsk): RollRow[] {
  const readingsOf = groupBy(ask.readings, (reading) => reading.gaugeId)
  const absencesOf = groupBy(ask.absences, (absence) => absence.gaugeId)
  const acceptedById = new Map(ask.accepted.map((entry) => [entry.reading.id, entry]))
  return ask.gauges
    .filter((gauge) => isExpected(gauge, ask.day))
    .map((gauge) =>
      rowOf(gauge, readingsOf.get(gauge.id) ?? [], absencesOf.get(gauge.id) ?? [], { ...ask, acceptedById }),
    )
    .sort((a, b) => (a.code < b.code ? -1 : a.code > b.code ? 1 : 0))
}

/** Open on the day: `openedOn` and `closedOn` are the first and last observing days of the gauge. */
export function isExpected(gauge: Gauge, day: IsoDay): boolean {
  return (gauge.openedOn === null || gauge.openedOn <= day) && (gauge.closedOn === null || day <= gauge.closedOn)
}

/** The reading that answers for the day: a daily one before a total, then the one received last. */
export function readingEndingOn(readings: readonly Reading[], day: IsoDay): Reading | null {
  let best: Reading | null = null
  for (const reading of readings) {
    if (reading.lastDay !== day) continue
    const better =
      best === null ||
      (reading.kind === 'daily' && best.kind !== 'daily') ||
      (reading.kind === best.kind && reading.receivedAtUtc > best.receivedAtUtc)
    if (better) best = reading
  }
  return best
}

type RowAsk = RollAsk & { acceptedById: ReadonlyMap<string, AcceptedReading> }

function rowOf(gauge: Gauge, readings: readonly Reading[], absences: readonly Absence[], ask: RowAsk): RollRow {
  const reading = readingEndingOn(readings, ask.day)
  const place = {
    gaugeId: gauge.id,
    code: gauge.code,
    name: gauge.name,
    area: gauge.area,
    observerName: gauge.observerName,
    latDeg: gauge.latDeg,
    lonDeg: gauge.lonDeg,
    elevationM: gauge.elevationM,
  }
  if (reading === null) {
    return {
      ...place,
      ...unreadAnswer(readings, absences, ask.day),
      readingId: null,
      amountUm: null,
      isTrace: false,
      text: null,
      spanDays: 0,
      endsAtUtc: null,
      standsOdds: null,
      decision: null,
      acceptedUm: null,
    }
  }
  const taken = ask.acceptedById.get(reading.id)
  return {
    ...place,
    answer: Date.parse(reading.endsAtUtc) > ask.lateAfterMs ? 'read late' : 'read',
    readingId: reading.id,
    amountUm: reading.amountUm,
    isTrace: reading.isTrace,
    text: reading.text,
    spanDays: epochDayFromIso(reading.lastDay) - epochDayFromIso(reading.firstDay) + 1,
    endsAtUtc: reading.endsAtUtc,
    standsOdds: ask.odds.get(reading.id)?.standsOdds ?? null,
    decision: ask.decisions.get(reading.id) ?? null,
    acceptedUm: taken !== undefined && taken.lastDay === ask.day ? taken.amountUm : null,
  }
}

/** Away while an absence covers the day; a total is open while it, or the total owed after an absence, has not come. */
function unreadAnswer(
  readings: readonly Reading[],
  absences: readonly Absence[],
  day: IsoDay,
): { answer: 'multi-day open' | 'silent' } | { answer: 'away'; awayUntil: IsoDay } {
  const ends = absences
    .filter(({ firstDay, lastDay }) => firstDay <= day && day <= lastDay)
    .map(({ lastDay }) => lastDay)
  const last = ends.sort().at(-1)
  if (last !== undefined) return { answer: 'away', awayUntil: last }
  if (readings.some((reading) => reading.firstDay <= day && day < reading.lastDay)) return { answer: 'multi-day open' }
  const owed = absences.some(
    (absence) =>
      absence.lastDay < day && !readings.some((reading) => reading.lastDay > absence.lastDay && reading.lastDay <= day),
  )
  return { answer: owed ? 'multi-day open' : 'silent' }
}

function groupBy<T>(rows: readonly T[], keyOf: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const row of rows) {
    const key = keyOf(row)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [row])
    else group.push(row)
  }
  return groups
}
