/**
 * Observing days: the stretch that ends at the network's reading hour, named by the date on which it ends. Follows the
 * clock on the wall, so that a day is 23 or 25 hours long where the clocks change. Which reading belongs to a day is in
 * placeReading.ts. Zones by the IANA database, through temporal-polyfill; each day's end is worked out once.
 */
import { Temporal } from 'temporal-polyfill'
import { dateFromEpochDay, type EpochDay } from './epochDay.ts'
import { msPerDay, msPerHour } from './instant.ts'

export interface ObservingDays {
  readonly timeZone: string
  /** `07:00`. */
  readonly readingTime: string
  /**
   * The instant at which a day ends, in ms since 1970 UTC. Where the clocks skip the reading hour, it is as much later;
   * where they show it twice, the first. A date that the zone skipped altogether ends with the day before it.
   */
  endUtcMs(day: EpochDay): number
  /** The day that an instant falls in: after the day's start, up to and including its end. */
  dayOf(utcMs: number): EpochDay
  /** After `startUtcMs`, up to and including `endUtcMs`. 24 hours but for changes of the clock. */
  intervalOf(day: EpochDay): { startUtcMs: number; endUtcMs: number; hours: number }
}

export type ObservingDaysAnswer =
  | { kind: 'days'; days: ObservingDays }
  | { kind: 'problem'; code: 'TIME_ZONE_UNKNOWN' | 'READING_TIME_UNCLEAR'; seen: string; advice: string }

/**
 * @param timeZone    IANA name, e.g. `Europe/Rome`
 * @param readingTime 24-hour local time, `07:00`
 * @returns the days, or a problem with what was given; nothing is thrown
 * @remarks A day's end costs about 15 µs the first time and a look-up after that.
 */
export function observingDays(timeZone: string, readingTime: string): ObservingDaysAnswer {
  const clock = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(readingTime.trim())
  if (clock === null) {
    const advice = 'Write the reading hour as a 24-hour local time, for instance 07:00.'
    return { kind: 'problem', code: 'READING_TIME_UNCLEAR', seen: readingTime, advice }
  }
  if (!isZone(timeZone)) {
    const advice = 'Name a zone of the IANA database by continent and city, for instance Europe/Rome, or UTC.'
    return { kind: 'problem', code: 'TIME_ZONE_UNKNOWN', seen: timeZone, advice }
  }
  const time = { hour: Number(clock[1]), minute: Number(clock[2]) }
  const ends = new Map<EpochDay, number>()

  function endUtcMs(day: EpochDay): number {
    const known = ends.get(day)
    if (known !== undefined) return known
    const date = dateFromEpochDay(day)
    const end = Temporal.ZonedDateTime.from({ timeZone, ...date, ...time })
    // A date that does not exist in the zone (an island that crossed the date line) comes back as another date.
    const utcMs = end.day === date.day ? end.epochMilliseconds : endUtcMs(day - 1)
    ends.set(day, utcMs)
    return utcMs
  }

  function dayOf(utcMs: number): EpochDay {
    let day = Math.floor(utcMs / msPerDay)
    while (endUtcMs(day) < utcMs) day++
    while (endUtcMs(day - 1) >= utcMs) day--
    return day
  }

  function intervalOf(day: EpochDay): { startUtcMs: number; endUtcMs: number; hours: number } {
    const startUtcMs = endUtcMs(day - 1)
    return { startUtcMs, endUtcMs: endUtcMs(day), hours: (endUtcMs(day) - startUtcMs) / msPerHour }
  }

  const padded = `${String(time.hour).padStart(2, '0')}:${String(time.minute).padStart(2, '0')}`
  return { kind: 'days', days: { timeZone, readingTime: padded, endUtcMs, dayOf, intervalOf } }
}

/** A name of the database, or UTC. Fixed offsets (`+01:00`) are refused: they know no change of the clock. */
function isZone(timeZone: string): boolean {
  if (!/^[A-Za-z]/.test(timeZone)) return false
  try {
    Temporal.ZonedDateTime.from({ timeZone, year: 2000, month: 1, day: 1 })
    return true
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}
