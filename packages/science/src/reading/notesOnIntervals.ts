/**
 * Time that belongs to two readings or to none: neighbouring readings (one's last day just before the other's first)
 * whose real intervals do not meet. Days without a reading are told in arrangeReadings.ts.
 */
import type { ArrangementNote } from './arrangement.ts'
import { epochDayFromIso } from './epochDay.ts'
import { msPerMinute, parseInstant } from './instant.ts'
import type { IsoDay } from './reading.ts'

interface IntervalReading {
  id: string
  firstDay: IsoDay
  lastDay: IsoDay
  startsAtUtc?: string
  endsAtUtc?: string
}

/** @param readings one for each interval, any order; those without instants say nothing. Less than a minute is nothing. */
export function notesOnIntervals(readings: readonly IntervalReading[]): ArrangementNote[] {
  const byLastDay = new Map<number, IntervalReading[]>()
  for (const reading of readings) {
    const last = epochDayFromIso(reading.lastDay)
    byLastDay.set(last, [...(byLastDay.get(last) ?? []), reading])
  }
  return readings.flatMap((later) => {
    const before = byLastDay.get(epochDayFromIso(later.firstDay) - 1) ?? []
    return before.flatMap((earlier) => noteOnPair(earlier, later))
  })
}

function noteOnPair(earlier: IntervalReading, later: IntervalReading): ArrangementNote[] {
  const endMs = earlier.endsAtUtc === undefined ? null : parseInstant(earlier.endsAtUtc)
  const startMs = later.startsAtUtc === undefined ? null : parseInstant(later.startsAtUtc)
  if (endMs === null || startMs === null) return []
  const gapMin = Math.trunc((startMs - endMs) / msPerMinute)
  if (gapMin === 0) return []
  const readingIds: [string, string] = [earlier.id, later.id]
  const days = { firstDay: earlier.lastDay, lastDay: later.firstDay }
  if (gapMin < 0) return [{ code: 'INTERVALS_OVERLAP', readingIds, minutes: -gapMin, ...days }]
  return [{ code: 'INTERVALS_LEAVE_GAP', readingIds, minutes: gapMin, ...days }]
}
