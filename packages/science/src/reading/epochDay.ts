/**
 * Calendar days as whole numbers: days since 1970-01-01, in the proleptic Gregorian calendar, by integer arithmetic
 * alone (no time zone, no instant, no Date). Years 0000 to 9999. Which instants a day covers is in observingDay.ts.
 * Source: the era algorithm of [Hinnant2013], "days_from_civil" and "civil_from_days".
 */
import { ScienceError } from '../error.ts'
import type { IsoDay } from './reading.ts'

/** Days since 1970-01-01, a whole number; days before it are negative. */
export type EpochDay = number

const DAYS_PER_ERA = 146_097
/** Days from 0000-03-01 to 1970-01-01. */
const DAYS_TO_1970 = 719_468
const MIN_EPOCH_DAY = -719_528
const MAX_EPOCH_DAY = 2_932_896
const daysInMonths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/**
 * The epoch day of an ISO date, or `null` where the text is not a real date written `YYYY-MM-DD`.
 * For text from outside. `2026-02-29` gives `null`. Time O(1), allocates nothing.
 */
export function parseIsoDay(text: string): EpochDay | null {
  if (text.length !== 10 || text.charCodeAt(4) !== 45 || text.charCodeAt(7) !== 45) return null
  const year = digits(text, 0, 4)
  const month = digits(text, 5, 2)
  const day = digits(text, 8, 2)
  if (year < 0 || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null
  return epochDayFromDate(year, month, day)
}

/**
 * The epoch day of an ISO date that is known to be real.
 * @throws {ScienceError} OUT_OF_DOMAIN when it is not `YYYY-MM-DD` or not a date; use {@link parseIsoDay} for typed text
 */
export function epochDayFromIso(day: IsoDay): EpochDay {
  const epochDay = parseIsoDay(day)
  if (epochDay === null) throw new ScienceError('OUT_OF_DOMAIN', `"${day}" is not a real date written YYYY-MM-DD`)
  return epochDay
}

/**
 * The ISO date of an epoch day.
 * @throws {ScienceError} OUT_OF_DOMAIN when it is not whole or outside the years 0000-9999
 */
export function isoFromEpochDay(epochDay: EpochDay): IsoDay {
  const { year, month, day } = dateFromEpochDay(epochDay)
  const yyyy = year < 1000 ? String(year).padStart(4, '0') : String(year)
  return `${yyyy}-${month < 10 ? '0' : ''}${month}-${day < 10 ? '0' : ''}${day}`
}

/**
 * Year, month (1-12) and day of the month of an epoch day.
 * @throws {ScienceError} OUT_OF_DOMAIN when it is not whole or outside the years 0000-9999
 */
export function dateFromEpochDay(epochDay: EpochDay): { year: number; month: number; day: number } {
  if (!Number.isInteger(epochDay) || epochDay < MIN_EPOCH_DAY || epochDay > MAX_EPOCH_DAY) {
    throw new ScienceError('OUT_OF_DOMAIN', `${epochDay} is not a whole epoch day within the years 0000-9999`)
  }
  const shifted = epochDay + DAYS_TO_1970
  const era = Math.floor(shifted / DAYS_PER_ERA)
  const dayOfEra = shifted - era * DAYS_PER_ERA
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153)
  const day = dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9
  return { year: era * 400 + yearOfEra + (month <= 2 ? 1 : 0), month, day }
}

/** Epoch day of a date known to be real; month 1-12. Nothing is checked. Time O(1). */
export function epochDayFromDate(year: number, month: number, day: number): EpochDay {
  const marchYear = month <= 2 ? year - 1 : year
  const era = Math.floor(marchYear / 400)
  const yearOfEra = marchYear - era * 400
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear
  return era * DAYS_PER_ERA + dayOfEra - DAYS_TO_1970
}

/** Days in a month (1-12) of a Gregorian year. */
export function daysInMonth(year: number, month: number): number {
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
  return month === 2 && isLeap ? 29 : (daysInMonths[month - 1] ?? 0)
}

/** Value of `count` ASCII digits from `start`, or -1 where one of them is not a digit. */
function digits(text: string, start: number, count: number): number {
  let value = 0
  for (let index = start; index < start + count; index++) {
    const digit = text.charCodeAt(index) - 48
    if (digit < 0 || digit > 9) return -1
    value = value * 10 + digit
  }
  return value
}
