import { describe, expect, it } from 'vitest'
import { ScienceError } from '../error.ts'
import {
  dateFromEpochDay,
  daysInMonth,
  epochDayFromDate,
  epochDayFromIso,
  isoFromEpochDay,
  parseIsoDay,
} from './epochDay.ts'

describe('epochDay', () => {
  it('epochDayFromIso counts whole days from 1970-01-01, before and after it', () => {
    expect(epochDayFromIso('1970-01-01')).toBe(0)
    expect(epochDayFromIso('1970-01-02')).toBe(1)
    expect(epochDayFromIso('1969-12-31')).toBe(-1)
    expect(epochDayFromIso('2000-03-01')).toBe(11_017) // 10957 (2000-01-01) + 60, 2000 being a leap year
  })

  it('isoFromEpochDay agrees with the platform calendar on every day of 1850-2150', () => {
    const first = epochDayFromDate(1850, 1, 1)
    const last = epochDayFromDate(2150, 12, 31)
    for (let day = first; day <= last; day++) {
      const iso = new Date(day * 86_400_000).toISOString().slice(0, 10)
      if (isoFromEpochDay(day) !== iso || epochDayFromIso(iso) !== day) expect(isoFromEpochDay(day)).toBe(iso)
    }
    expect(last - first + 1).toBe(301 * 365 + 73) // 75 leap years by 4, less 1900 and 2100
  })

  it('the first and last day that ISO text can write are kept', () => {
    expect(isoFromEpochDay(epochDayFromIso('0000-01-01'))).toBe('0000-01-01')
    expect(isoFromEpochDay(epochDayFromIso('9999-12-31'))).toBe('9999-12-31')
    expect(() => isoFromEpochDay(epochDayFromIso('9999-12-31') + 1)).toThrow(ScienceError)
    expect(() => isoFromEpochDay(epochDayFromIso('0000-01-01') - 1)).toThrow(ScienceError)
  })

  it('parseIsoDay knows leap years by the Gregorian rule', () => {
    expect(parseIsoDay('2024-02-29')).not.toBeNull()
    expect(parseIsoDay('2000-02-29')).not.toBeNull()
    expect(parseIsoDay('2026-02-29')).toBeNull()
    expect(parseIsoDay('1900-02-29')).toBeNull()
    expect(daysInMonth(2100, 2)).toBe(28)
  })

  it.each([
    '',
    '2026-3-29',
    '2026-03-32',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '29-03-2026',
    '2026/03/29',
    '2026-03-29T07:00',
    ' 2026-03-29',
    '２０２６-03-29',
    '+026-03-29',
  ])('parseIsoDay(%j) is null, not a guessed day', (text) => {
    expect(parseIsoDay(text)).toBeNull()
    expect(() => epochDayFromIso(text)).toThrow(ScienceError)
  })

  it('dateFromEpochDay refuses a fraction of a day', () => {
    expect(() => dateFromEpochDay(1.5)).toThrow('OUT_OF_DOMAIN')
    expect(() => dateFromEpochDay(Number.NaN)).toThrow('OUT_OF_DOMAIN')
  })
})
