/** When reminders are due, on the network's own clock. */
import { type EpochDay, observingDays } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'

export interface ReminderHour {
  /** The local date, and so the observing day that ended on it at the reading hour. */
  day: EpochDay
  /** The hour of reminders on that date, and the end of that date, ms since 1970 UTC. */
  dueMs: number
  dayEndsMs: number
}

/** @returns null where the network's zone or one of the hours cannot be read */
export function reminderHour(
  network: Pick<NetworkSettings, 'timeZone'>,
  atTime: string,
  nowMs: number,
): ReminderHour | null {
  const midnights = observingDays(network.timeZone, '00:00')
  const hours = observingDays(network.timeZone, atTime)
  if (midnights.kind === 'problem' || hours.kind === 'problem') return null
  // A date begins at its midnight, which still ends the date before: one millisecond later it is in.
  const day = midnights.days.dayOf(nowMs + 1) - 1
  return { day, dueMs: hours.days.endUtcMs(day), dayEndsMs: midnights.days.endUtcMs(day + 1) }
}
