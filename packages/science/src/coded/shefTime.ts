/**
 * The clock of a message: a time on the wall that its header and its date groups set, and a distance from it (DR).
 * [SHEF2012] 4.1.4, 4.4.1 to 4.4.4, Tables 9 and 11.
 */
import { Temporal } from 'temporal-polyfill'
import { instantOfWall, type WallTime, wallOfInstant } from './shefZones.ts'

/** A step in time: months and years by the calendar, E whole months to their last day. */
export interface ShefStep {
  unit: 'S' | 'N' | 'H' | 'D' | 'M' | 'Y' | 'E'
  count: number
}

const stepFields = { S: 'seconds', N: 'minutes', H: 'hours', D: 'days', M: 'months', Y: 'years' } as const

/** Wall time of a header: date digits, at 24:00 local or 12:00 UTC. Null where it is no date. */
export function headerWall(digits: string, zone: string, nowUtcMs: number): WallTime | null {
  const date = readDate(digits, zone, nowUtcMs)
  return date === null ? null : { ...date, hour: zone === 'UTC' ? 12 : 24, minute: 0, second: 0 }
}

/** mmdd (the nearest year), yymmdd (the nearest century) or ccyymmdd. */
function readDate(digits: string, zone: string, nowUtcMs: number): Pick<WallTime, 'year' | 'month' | 'day'> | null {
  if (!/^(\d{4}|\d{6}|\d{8})$/.test(digits)) return null
  const [month, day] = [Number(digits.slice(-4, -2)), Number(digits.slice(-2))]
  const years = yearsFor(digits.slice(0, -4), wallOfInstant(nowUtcMs, 'UTC').year)
  let best: { year: number; apart: number } | null = null
  for (const year of years) {
    const atMs = instantOfWall({ year, month, day, hour: 12, minute: 0, second: 0 }, zone)
    if (atMs === null) continue
    const apart = Math.abs(atMs - nowUtcMs)
    if (best === null || apart < best.apart) best = { year, apart }
  }
  return best === null ? null : { year: best.year, month, day }
}

function yearsFor(digits: string, thisYear: number): number[] {
  if (digits.length === 4) return [Number(digits)]
  if (digits.length === 0) return [thisYear, thisYear - 1, thisYear + 1]
  const year = Math.floor(thisYear / 100) * 100 + Number(digits)
  return [year, year - 100, year + 100]
}

/**
 * The wall time after a group D S, N, H, D, M, Y, T or J with its digits, or null where it does not fit. What a group
 * leaves out below its own unit is 0 within the hour; above it and between, all stays.
 */
export function applyDateGroup(wall: WallTime, unit: string, digits: string): WallTime | null {
  if (digits.length === 0 || digits.length > 14) return null
  if (unit === 'J') return applyJulian(wall, digits)
  if (unit === 'T')
    return digits.length < 4
      ? null
      : applyDateGroup({ ...wall, year: Number(digits.slice(0, 4)) }, 'M', digits.slice(4))
  const order = ['Y', 'M', 'D', 'H', 'N', 'S']
  const names = ['year', 'month', 'day', 'hour', 'minute', 'second'] as const
  const start = order.indexOf(unit)
  if (start < 0 || digits.length % 2 !== 0 || digits.length / 2 > order.length - start) return null
  const result = { ...wall }
  const count = digits.length / 2
  for (let index = 0; index < count; index++) {
    const value = Number(digits.slice(index * 2, index * 2 + 2))
    const name = names[start + index] as (typeof names)[number]
    result[name] = name === 'year' ? Math.floor(wall.year / 100) * 100 + value : value
  }
  const last = start + count - 1
  if (last === 3) result.minute = 0
  if (last === 3 || last === 4) result.second = 0
  return result
}

/** ddd, yyddd or ccyyddd: the day of the year. */
function applyJulian(wall: WallTime, digits: string): WallTime | null {
  if (![3, 5, 7].includes(digits.length)) return null
  const dayOfYear = Number(digits.slice(-3))
  const given = digits.slice(0, -3)
  const century = Math.floor(wall.year / 100) * 100
  const year = given === '' ? wall.year : given.length === 2 ? century + Number(given) : Number(given)
  if (dayOfYear < 1 || dayOfYear > 366 || year < 1000) return null
  const date = Temporal.PlainDate.from({ year, month: 1, day: 1 }).add({ days: dayOfYear - 1 })
  return date.year === year ? { ...wall, year, month: date.month, day: date.day } : null
}

/** DC: mmddhhnn, with yy or ccyy before it; hours and minutes may be left out. Null where it is no time. */
export function creationInstant(digits: string, zone: string, nowUtcMs: number): number | null {
  const dateLength = { 4: 4, 6: 4, 8: 4, 10: 6, 12: 8 }[digits.length]
  if (dateLength === undefined || !/^\d+$/.test(digits)) return null
  const date = readDate(digits.slice(0, dateLength), zone, nowUtcMs)
  const clock = digits.slice(dateLength)
  if (date === null) return null
  const [hour, minute] = [Number(clock.slice(0, 2)), Number(clock.slice(2, 4))]
  return instantOfWall({ ...date, hour, minute, second: 0 }, zone)
}

/** The instant that lies `times` steps from a wall time. Null where the wall time is none or the step leads too far. */
export function stepFrom(wall: WallTime, zone: string, step: ShefStep | null, times = 1): number | null {
  const atMs = instantOfWall(wall, zone)
  if (atMs === null || step === null || (step.count === 0 && step.unit !== 'E')) return atMs
  if (Math.abs(step.count * times) > 100_000) return null
  const at = Temporal.Instant.fromEpochMilliseconds(atMs).toZonedDateTimeISO(zone)
  try {
    if (step.unit !== 'E') return at.add({ [stepFields[step.unit]]: step.count * times }).epochMilliseconds
    const moved = at.with({ day: 1 }).add({ months: step.count * times })
    return moved.with({ day: moved.daysInMonth }).epochMilliseconds
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

/** 07:00 on the wall at or before an instant; strictly before it where asked. */
export function sevenBefore(utcMs: number, zone: string, isStrict: boolean): number | null {
  const wall = wallOfInstant(utcMs, zone)
  const seven = { ...wall, hour: 7, minute: 0, second: 0 }
  const atMs = instantOfWall(seven, zone)
  if (atMs === null || atMs < utcMs || (atMs === utcMs && !isStrict)) return atMs
  return stepFrom(seven, zone, { unit: 'D', count: -1 })
}
