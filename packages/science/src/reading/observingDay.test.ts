import { describe, expect, it } from 'vitest'
import { epochDayFromIso, isoFromEpochDay } from './epochDay.ts'
import { formatInstant, msPerMinute, parseInstant } from './instant.ts'
import { type ObservingDays, observingDays } from './observingDay.ts'
import { placeReading } from './placeReading.ts'

function daysIn(timeZone: string, readingTime: string): ObservingDays {
  const answer = observingDays(timeZone, readingTime)
  if (answer.kind === 'problem') throw new Error(answer.code)
  return answer.days
}
const at = (text: string) => parseInstant(text) ?? Number.NaN
const day = epochDayFromIso
const rome = daysIn('Europe/Rome', '07:00')

describe('observingDays', () => {
  it('ends at the reading hour on the wall, summer and winter', () => {
    expect(formatInstant(rome.endUtcMs(day('2026-01-15')))).toBe('2026-01-15T06:00:00Z')
    expect(formatInstant(rome.endUtcMs(day('2026-07-15')))).toBe('2026-07-15T05:00:00Z')
  })
  it.each([
    ['Europe/Rome', '07:00', '2026-03-29', 23],
    ['Europe/Rome', '07:00', '2026-10-25', 25],
    ['America/Denver', '07:00', '2026-03-08', 23],
    ['America/Denver', '07:00', '2026-11-01', 25],
    ['America/Denver', '07:00', '2026-11-02', 24],
    ['Australia/Lord_Howe', '09:00', '2026-04-05', 24.5], // half an hour of summer time
    ['UTC', '09:00', '2026-03-29', 24],
  ])('in %s at %s the day %s is %d hours long', (zone, time, iso, hours) => {
    expect(daysIn(zone, time).intervalOf(day(iso)).hours).toBe(hours)
  })
  it('a reading hour that the clocks skip comes as much later, one shown twice is the first', () => {
    const skipped = daysIn('Europe/Rome', '02:30').endUtcMs(day('2026-03-29'))
    expect(formatInstant(skipped)).toBe('2026-03-29T01:30:00Z') // 03:30 summer time
    const twice = daysIn('Europe/Rome', '02:30').endUtcMs(day('2026-10-25'))
    expect(formatInstant(twice)).toBe('2026-10-25T00:30:00Z')
  })
  it('a date that a zone skipped is an empty day', () => {
    const apia = daysIn('Pacific/Apia', '07:00') // no 30 December 2011: the islands moved across the date line
    expect(apia.intervalOf(day('2011-12-30')).hours).toBe(0)
    expect(apia.intervalOf(day('2011-12-31')).hours).toBe(24)
    const end = apia.endUtcMs(day('2011-12-31'))
    expect(isoFromEpochDay(apia.dayOf(end))).toBe('2011-12-31')
    expect(isoFromEpochDay(apia.dayOf(end - 24 * 60 * msPerMinute))).toBe('2011-12-29')
  })
  it('the end belongs to the day, the start to the day before', () => {
    const { startUtcMs, endUtcMs } = rome.intervalOf(day('2026-03-29'))
    expect(isoFromEpochDay(rome.dayOf(endUtcMs))).toBe('2026-03-29')
    expect(isoFromEpochDay(rome.dayOf(endUtcMs + 1))).toBe('2026-03-30')
    expect(isoFromEpochDay(rome.dayOf(startUtcMs))).toBe('2026-03-28')
    expect(isoFromEpochDay(rome.dayOf(startUtcMs + 1))).toBe('2026-03-29')
  })
  it.each([
    ['Pacific/Kiritimati', '2026-05-09T17:00:00Z'], // 07:00 on the 10th, 14 hours ahead
    ['Pacific/Pago_Pago', '2026-05-10T18:00:00Z'], // 07:00 on the 10th, 11 hours behind
  ])('finds the day far from Greenwich: %s', (zone, end) => {
    const days = daysIn(zone, '07:00')
    expect(formatInstant(days.endUtcMs(day('2026-05-10')))).toBe(end)
    expect(isoFromEpochDay(days.dayOf(at(end)))).toBe('2026-05-10')
    expect(isoFromEpochDay(days.dayOf(at(end) + 1))).toBe('2026-05-11')
  })
  it('says which zone or hour it does not know', () => {
    expect(observingDays('Middle/Nowhere', '07:00')).toMatchObject({
      code: 'TIME_ZONE_UNKNOWN',
      seen: 'Middle/Nowhere',
    })
    expect(observingDays('+01:00', '07:00')).toMatchObject({ code: 'TIME_ZONE_UNKNOWN' })
    expect(observingDays('', '07:00')).toMatchObject({ code: 'TIME_ZONE_UNKNOWN' })
    expect(observingDays('UTC', '7 am')).toMatchObject({ code: 'READING_TIME_UNCLEAR', seen: '7 am' })
    expect(observingDays('UTC', '24:00')).toMatchObject({ code: 'READING_TIME_UNCLEAR' })
  })
  it('takes 7:00 for 07:00', () => {
    expect(daysIn('UTC', '7:00').readingTime).toBe('07:00')
  })
})

describe('placeReading', () => {
  const placed = (read: string, emptied: string | null = null) =>
    placeReading(rome, at(read), emptied === null ? null : at(emptied))

  it('a reading at 06:40 is the day’s, and keeps its real interval', () => {
    const reading = placed('2026-07-15T06:40:00+02:00', '2026-07-14T07:10:00+02:00')
    expect(isoFromEpochDay(reading.day)).toBe('2026-07-15')
    expect(reading).toMatchObject({ timing: 'on time', offsetMin: -20, isDays: true })
    expect(formatInstant(reading.startUtcMs)).toBe('2026-07-14T05:10:00Z')
    expect(formatInstant(reading.endUtcMs)).toBe('2026-07-15T04:40:00Z')
  })
  it.each([
    ['2026-07-15T05:00:00+02:00', '2026-07-15', 'on time', -120],
    ['2026-07-15T04:59:00+02:00', '2026-07-15', 'early', -121],
    ['2026-07-15T09:00:00+02:00', '2026-07-15', 'on time', 120],
    ['2026-07-15T09:01:00+02:00', '2026-07-15', 'late', 121],
    ['2026-07-15T13:00:00+02:00', '2026-07-15', 'late', 360],
    ['2026-07-15T13:01:00+02:00', '2026-07-16', 'off hour', -1079],
    ['2026-07-15T18:30:00+02:00', '2026-07-16', 'off hour', -750],
    ['2026-07-16T00:30:00+02:00', '2026-07-16', 'off hour', -390],
  ])('read at %s: day %s, %s, %d min from the hour', (read, iso, timing, offsetMin) => {
    const reading = placed(read)
    expect(isoFromEpochDay(reading.day)).toBe(iso)
    expect(reading).toMatchObject({ timing, offsetMin })
    expect(reading.isDays).toBe(timing === 'on time')
  })
  it('a reading on time after an off-hour emptying is not the day’s alone', () => {
    const reading = placed('2026-07-15T07:05:00+02:00', '2026-07-14T18:00:00+02:00')
    expect(reading).toMatchObject({ timing: 'on time', isDays: false })
    expect(formatInstant(reading.startUtcMs)).toBe('2026-07-14T16:00:00Z')
  })
  it('counts real minutes across a change of the clocks', () => {
    expect(placed('2026-03-29T04:00:00+02:00')).toMatchObject({ timing: 'early', offsetMin: -180 })
    expect(isoFromEpochDay(placed('2026-03-29T01:30:00+01:00').day)).toBe('2026-03-29') // 270 min before, not 330
    expect(placed('2026-03-29T01:30:00+01:00')).toMatchObject({ timing: 'early', offsetMin: -270 })
  })
})

describe('instants', () => {
  it('are read with any offset and written in UTC', () => {
    expect(formatInstant(at('2026-03-29T07:00:00+02:00'))).toBe('2026-03-29T05:00:00Z')
    expect(formatInstant(at('2026-03-29 07:00-0730'))).toBe('2026-03-29T14:30:00Z')
    expect(formatInstant(at('1969-12-31T23:59:59.5Z'))).toBe('1969-12-31T23:59:59.500Z')
    expect(at('2026-03-29T05:00:00Z')).toBe(Date.UTC(2026, 2, 29, 5))
  })
  it.each(['2026-03-29T07:00:00', '2026-02-30T07:00:00Z', '2026-03-29T24:00:00Z', '2026-03-29', '', 'now'])(
    '%j names no instant',
    (text) => {
      expect(parseInstant(text)).toBeNull()
    },
  )
})
