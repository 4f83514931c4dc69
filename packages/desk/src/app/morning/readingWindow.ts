/** Which readings are late for their day, and which were read so far from the reading hour that no neighbour compares. */
import {
  type AcceptWindow,
  epochDayFromIso,
  type ObservingDays,
  observingDays,
  type Reading,
  usualWindow,
} from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import { LedgerError } from '../../ports/ledgerError.ts'

const MS_PER_MINUTE = 60_000
const known = new Map<string, ObservingDays>()

/** @throws {LedgerError} LEDGER_DAMAGED where the ledger holds a zone or an hour that nobody should have let in */
function daysOf(network: NetworkSettings): ObservingDays {
  const key = `${network.timeZone} ${network.readingTime}`
  const before = known.get(key)
  if (before !== undefined) return before
  const answer = observingDays(network.timeZone, network.readingTime)
  if (answer.kind === 'problem') {
    throw new LedgerError('LEDGER_DAMAGED', `The network ${network.id} has "${answer.seen}".`, answer.advice)
  }
  known.set(key, answer.days)
  return answer.days
}

/** A reading of the day whose interval ends after this instant (ms since 1970) was read late. */
export function lateAfterMs(network: NetworkSettings, day: string): number {
  return daysOf(network).endUtcMs(epochDayFromIso(day)) + network.acceptWindowMin * MS_PER_MINUTE
}

/**
 * True where a reading may stand beside its neighbours of the same observing day: both ends of its interval within six
 * hours of the reading hour, so that it shares most of its day with theirs. Anything else keeps its real hour and is
 * not compared.
 */
export function isComparable(network: NetworkSettings, reading: Reading, window: AcceptWindow = usualWindow): boolean {
  const days = daysOf(network)
  const off = (utc: string, day: number): number => Math.abs(Date.parse(utc) - days.endUtcMs(day)) / MS_PER_MINUTE
  return (
    off(reading.endsAtUtc, epochDayFromIso(reading.lastDay)) <= window.limitMin &&
    off(reading.startsAtUtc, epochDayFromIso(reading.firstDay) - 1) <= window.limitMin
  )
}
