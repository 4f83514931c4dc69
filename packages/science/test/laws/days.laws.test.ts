import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  arrangeReadings,
  checkGaugeCode,
  epochDayFromIso,
  formatInstant,
  gaugeCodeFromSerial,
  isoFromEpochDay,
  observingDays,
  parseInstant,
  placeReading,
} from '../../src/index.ts'

fc.configureGlobal({ seed: Number(process.env.LAWS_SEED ?? 20_260_329), numRuns: Number(process.env.LAWS_RUNS ?? 200) })

const networks = [
  ['Europe/Rome', '07:00'],
  ['America/Denver', '07:00'],
  ['Australia/Lord_Howe', '09:00'],
  ['America/St_Johns', '02:15'],
  ['Pacific/Apia', '08:00'],
  ['UTC', '00:00'],
].map(([zone = '', time = '']) => {
  const answer = observingDays(zone, time)
  if (answer.kind === 'problem') throw new Error(answer.code)
  return answer.days
})
const network = fc.constantFrom(...networks)
/** 1960 to 2060. */
const instant = fc.integer({ min: -315_619_200_000, max: 2_840_140_800_000 })
const day = fc.integer({ min: -3_653, max: 32_871 })

describe('laws of days', () => {
  it('every instant lies in its observing day and in no other', () => {
    fc.assert(
      fc.property(network, instant, (days, utcMs) => {
        const { startUtcMs, endUtcMs } = days.intervalOf(days.dayOf(utcMs))
        expect(startUtcMs).toBeLessThan(utcMs)
        expect(endUtcMs).toBeGreaterThanOrEqual(utcMs)
      }),
    )
  })

  it('days follow on each other without gap, and are 0, or 22 to 26, hours long', () => {
    fc.assert(
      fc.property(network, day, (days, epochDay) => {
        expect(days.intervalOf(epochDay + 1).startUtcMs).toBe(days.intervalOf(epochDay).endUtcMs)
        const { hours } = days.intervalOf(epochDay)
        expect(hours === 0 || (hours >= 22 && hours <= 26)).toBe(true)
      }),
    )
  })

  it('a reading within the window is its day’s; any reading keeps the instant at which it was read', () => {
    fc.assert(
      fc.property(network, day, fc.integer({ min: -120, max: 120 }), (days, epochDay, offsetMin) => {
        fc.pre(days.intervalOf(epochDay).hours > 0 && days.intervalOf(epochDay + 1).hours > 0)
        const readAt = days.endUtcMs(epochDay) + offsetMin * 60_000
        expect(placeReading(days, readAt, null)).toMatchObject({
          day: epochDay,
          timing: 'on time',
          offsetMin,
          endUtcMs: readAt,
        })
      }),
    )
    fc.assert(
      fc.property(network, instant, (days, readAt) => {
        const placed = placeReading(days, readAt, null)
        expect(placed.endUtcMs).toBe(readAt)
        expect(placed.startUtcMs).toBeLessThanOrEqual(readAt)
      }),
    )
  })

  it('ISO days and instants come back from their text', () => {
    fc.assert(
      fc.property(fc.integer({ min: -719_528, max: 2_932_896 }), (epochDay) => {
        expect(epochDayFromIso(isoFromEpochDay(epochDay))).toBe(epochDay)
      }),
    )
    fc.assert(
      fc.property(instant, (utcMs) => {
        expect(parseInstant(formatInstant(utcMs))).toBe(utcMs)
      }),
    )
  })
})

describe('laws of arrangement', () => {
  const spans = fc.array(
    fc.tuple(fc.integer({ min: 0, max: 24 }), fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 3 })),
    { maxLength: 12 },
  )
  const readingsOf = (given: [number, number, number][]) =>
    given.map(([first, more, hundredths], index) => ({
      id: `r${index}`,
      firstDay: isoFromEpochDay(20_000 + first),
      lastDay: isoFromEpochDay(20_000 + first + more),
      amountUm: hundredths * 254,
      isTrace: false,
    }))
  const ask = { fromDay: isoFromEpochDay(20_000), toDay: isoFromEpochDay(20_029) }

  it('a day is silent exactly where no reading covers it; a counted reading covers its day', () => {
    fc.assert(
      fc.property(spans, (given) => {
        const readings = readingsOf(given)
        for (const cover of arrangeReadings(readings, ask).days) {
          const over = readings.filter(({ firstDay, lastDay }) => firstDay <= cover.day && cover.day <= lastDay)
          expect([...cover.readingIds].sort()).toEqual(over.map(({ id }) => id).sort())
          expect(cover.state === 'silent').toBe(over.length === 0)
          expect(cover.countedId === null).toBe(cover.state === 'silent' || cover.state === 'disputed')
          if (cover.countedId !== null) expect(cover.readingIds).toContain(cover.countedId)
        }
      }),
    )
  })

  it('every disputed day lies in a note that says why', () => {
    const whys = new Set(['READINGS_DISAGREE', 'TOTAL_HOLDS_READINGS', 'TOTAL_BELOW_READINGS', 'TOTALS_CROSS'])
    fc.assert(
      fc.property(spans, (given) => {
        const { days, notes } = arrangeReadings(readingsOf(given), ask)
        for (const cover of days.filter(({ state }) => state === 'disputed')) {
          const named = notes
            .filter((note) => whys.has(note.code))
            .flatMap((note) =>
              'totalId' in note ? [note.totalId, ...note.readingIds] : 'readingIds' in note ? note.readingIds : [],
            )
          expect(cover.readingIds.some((id) => named.includes(id))).toBe(true)
        }
      }),
    )
  })

  it('a counted total counts on every day of it that is not disputed, or on none', () => {
    fc.assert(
      fc.property(spans, (given) => {
        const readings = readingsOf(given)
        const { days } = arrangeReadings(readings, ask)
        for (const cover of days.filter(({ state }) => state === 'in total')) {
          const total = readings.find(({ id }) => id === cover.countedId)
          const others = days.filter(({ day }) => total !== undefined && total.firstDay <= day && day <= total.lastDay)
          for (const other of others) expect([cover.countedId, null]).toContain(other.countedId)
        }
      }),
    )
  })
})

describe('laws of gauge codes', () => {
  it('every code made is accepted, in any spelling, and no single slip is', () => {
    const serial = fc.integer({ min: 0, max: 200_000_000 })
    const base32 = fc.constantFrom(...'0123456789ABCDEFGHJKMNPQRSTVWXYZ')
    fc.assert(
      fc.property(serial, fc.nat(), base32, (given, place, wrong) => {
        const code = gaugeCodeFromSerial(given)
        expect(checkGaugeCode(` ${code.toLowerCase()} `)).toEqual({ kind: 'code', code })
        const at = place % code.length
        const slip = code.slice(0, at) + wrong + code.slice(at + 1)
        if (slip !== code) expect(checkGaugeCode(slip).kind).toBe('problem')
      }),
    )
  })
})
