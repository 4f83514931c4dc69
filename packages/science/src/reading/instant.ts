/**
 * Instants as whole milliseconds since 1970-01-01T00:00Z, and their RFC 3339 text in UTC. No clock is read here: an
 * instant always comes from outside. Days of a network's zone are in observingDay.ts.
 */
import { isoFromEpochDay, parseIsoDay } from './epochDay.ts'

export const msPerMinute = 60_000
export const msPerHour = 3_600_000
export const msPerDay = 86_400_000

const rfc3339 = /^(\d{4}-\d\d-\d\d)[Tt ](\d\d):(\d\d)(?::(\d\d)(?:\.(\d{1,9}))?)?(?:([Zz])|([+-])(\d\d):?(\d\d))$/

/**
 * Milliseconds of an RFC 3339 text, or `null` where it is none. The offset must be written (`Z` or `+02:00`): a local
 * time alone names no instant. Seconds may be left out; digits beyond milliseconds are dropped.
 */
export function parseInstant(text: string): number | null {
  const parts = rfc3339.exec(text.trim())
  if (parts === null) return null
  const [, dayText = '', hour, minute, second = '0', fraction = '', , sign, offsetHour = '0', offsetMinute = '0'] =
    parts
  const day = parseIsoDay(dayText)
  const isTime = Number(hour) < 24 && Number(minute) < 60 && Number(second) < 61
  if (day === null || !isTime || Number(offsetHour) > 23 || Number(offsetMinute) > 59) return null
  const localMs = day * msPerDay + Number(hour) * msPerHour + Number(minute) * msPerMinute + Number(second) * 1000
  const offsetMs = Number(offsetHour) * msPerHour + Number(offsetMinute) * msPerMinute
  return localMs + Number(fraction.padEnd(3, '0').slice(0, 3)) - (sign === '-' ? -offsetMs : offsetMs)
}

/**
 * RFC 3339 text in UTC: `2026-03-29T05:00:00Z`, with milliseconds only where there are some.
 * @throws {ScienceError} OUT_OF_DOMAIN outside the years 0000-9999 or for NaN
 */
export function formatInstant(utcMs: number): string {
  const day = Math.floor(utcMs / msPerDay)
  const inDayMs = utcMs - day * msPerDay
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0')
  const clock = `${two(inDayMs / msPerHour)}:${two((inDayMs / msPerMinute) % 60)}:${two((inDayMs / 1000) % 60)}`
  const restMs = inDayMs % 1000
  return `${isoFromEpochDay(day)}T${clock}${restMs === 0 ? '' : `.${String(restMs).padStart(3, '0')}`}Z`
}
