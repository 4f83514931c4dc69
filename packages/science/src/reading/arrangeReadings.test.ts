import { describe, expect, it } from 'vitest'
import { type ArrangeableReading, arrangeReadings } from './arrangeReadings.ts'
import { wordArrangementNote } from './wordArrangementNote.ts'

/** Days of May 2026; amounts in hundredths of an inch, -1 for a trace. */
function reading(id: string, first: number, last: number, hundredths: number): ArrangeableReading {
  const amount = hundredths < 0 ? { amountUm: 0, isTrace: true } : { amountUm: hundredths * 254, isTrace: false }
  return { id, firstDay: iso(first), lastDay: iso(last), ...amount }
}
const iso = (day: number) => `2026-05-${String(day).padStart(2, '0')}`
const week = { fromDay: iso(4), toDay: iso(10) }
const states = (readings: ArrangeableReading[]) =>
  arrangeReadings(readings, week).days.map(
    ({ state, countedId }) => `${state}${countedId === null ? '' : ` ${countedId}`}`,
  )
const notes = (readings: ArrangeableReading[]) => arrangeReadings(readings, week).notes

describe('arrangeReadings', () => {
  it('lays a week of daily readings out with nothing to say', () => {
    const readings = [4, 5, 6, 7, 8, 9, 10].map((day) => reading(`r${day}`, day, day, day * 3))
    expect(states(readings.reverse())).toEqual(['r4', 'r5', 'r6', 'r7', 'r8', 'r9', 'r10'].map((id) => `read ${id}`))
    expect(notes(readings)).toEqual([])
  })

  it('a zero and a trace are readings; a day without one is silent', () => {
    const readings = [reading('zero', 4, 4, 0), reading('trace', 6, 6, -1)]
    expect(states(readings).slice(0, 3)).toEqual(['read zero', 'silent', 'read trace'])
    expect(notes(readings)).toEqual([
      { code: 'DAYS_SILENT', firstDay: iso(5), lastDay: iso(5), dayCount: 1, nextReadingId: 'trace', nextDay: iso(6) },
      { code: 'DAYS_SILENT', firstDay: iso(7), lastDay: iso(10), dayCount: 4, nextReadingId: null, nextDay: null },
    ])
  })

  it('a total covers its days and gives none of them an amount of its own', () => {
    const readings = [reading('fri', 5, 5, 12), reading('mon', 6, 8, 62)]
    expect(states(readings)).toEqual([
      'silent',
      'read fri',
      'in total mon',
      'in total mon',
      'in total mon',
      'silent',
      'silent',
    ])
    expect(notes(readings)).toContainEqual({
      code: 'TOTAL_OVER_DAYS',
      readingId: 'mon',
      dayCount: 3,
      firstDay: iso(6),
      lastDay: iso(8),
    })
  })

  it('a repeat counts once; two amounts for one day are disputed', () => {
    const repeat = [reading('a', 4, 4, 7), reading('b', 4, 4, 7)]
    expect(states(repeat)[0]).toBe('read a')
    expect(notes(repeat)[0]).toEqual({
      code: 'READING_REPEATED',
      readingIds: ['a', 'b'],
      firstDay: iso(4),
      lastDay: iso(4),
    })
    const dispute = [reading('a', 4, 4, 7), reading('b', 4, 4, 70)]
    expect(states(dispute)[0]).toBe('disputed')
    expect(notes(dispute)[0]).toMatchObject({ code: 'READINGS_DISAGREE', lowestUm: 7 * 254, highestUm: 70 * 254 })
  })

  it('a trace and a zero for one day disagree', () => {
    expect(states([reading('a', 4, 4, 0), reading('b', 4, 4, -1)])[0]).toBe('disputed')
  })

  it('a total that repeats its days leaves the days as read', () => {
    const readings = [reading('sum', 4, 6, 60), reading('a', 4, 4, 10), reading('b', 5, 5, 20), reading('c', 6, 6, 30)]
    expect(states(readings).slice(0, 3)).toEqual(['read a', 'read b', 'read c'])
    expect(notes(readings)).toContainEqual({
      code: 'TOTAL_REPEATS_DAYS',
      totalId: 'sum',
      readingIds: ['a', 'b', 'c'],
      firstDay: iso(4),
      lastDay: iso(6),
    })
  })

  it('zeros inside a total dispute its days, and the rest is worked out', () => {
    const readings = [reading('sum', 4, 7, 62), reading('z4', 4, 4, 0), reading('z5', 5, 5, 3)]
    expect(states(readings).slice(0, 4)).toEqual(['disputed', 'disputed', 'in total sum', 'in total sum'])
    expect(notes(readings)).toContainEqual({
      code: 'TOTAL_HOLDS_READINGS',
      totalId: 'sum',
      readingIds: ['z4', 'z5'],
      restUm: 59 * 254,
      restDayCount: 2,
      firstDay: iso(4),
      lastDay: iso(7),
    })
  })

  it('a total below the readings inside it is named, with what is short', () => {
    const readings = [reading('sum', 4, 6, 15), reading('b', 5, 5, 20)]
    expect(notes(readings)).toContainEqual(
      expect.objectContaining({ code: 'TOTAL_BELOW_READINGS', totalId: 'sum', shortUm: 5 * 254 }),
    )
    expect(states(readings)[1]).toBe('disputed')
  })

  it('totals that cross dispute all their days, and the shared ones are named', () => {
    const readings = [reading('one', 4, 7, 30), reading('two', 6, 9, 40)]
    expect(notes(readings)).toContainEqual({
      code: 'TOTALS_CROSS',
      readingIds: ['one', 'two'],
      dayCount: 2,
      firstDay: iso(6),
      lastDay: iso(7),
    })
    expect(states(readings)).toEqual([...Array(6).fill('disputed'), 'silent'])
  })

  it('a total inside a total is held by it, and its days by the smaller only', () => {
    const readings = [reading('week', 4, 9, 50), reading('half', 5, 7, 30), reading('day', 6, 6, 12)]
    const held = notes(readings).filter((note) => note.code === 'TOTAL_HOLDS_READINGS')
    expect(held).toMatchObject([
      { totalId: 'week', readingIds: ['half'], restUm: 20 * 254, restDayCount: 3 },
      { totalId: 'half', readingIds: ['day'], restUm: 18 * 254, restDayCount: 2 },
    ])
  })

  it('a total that began before the days asked for still covers them', () => {
    const readings = [reading('long', 1, 5, 80)]
    expect(states(readings).slice(0, 3)).toEqual(['in total long', 'in total long', 'silent'])
  })

  it('tells real intervals that share time or leave some out, by the minute', () => {
    const at = (id: string, day: number, startsAtUtc: string, endsAtUtc: string) => ({
      ...reading(id, day, day, day),
      startsAtUtc,
      endsAtUtc,
    })
    const readings = [
      at('a', 4, '2026-05-03T05:00:00Z', '2026-05-04T05:00:00Z'),
      at('b', 5, '2026-05-04T05:00:00Z', '2026-05-05T09:30:00Z'), // late
      at('c', 6, '2026-05-05T05:00:00Z', '2026-05-06T05:00:00Z'),
      at('d', 7, '2026-05-06T06:15:00Z', '2026-05-07T05:00:00Z'),
    ]
    expect(notes(readings).filter(({ code }) => code.startsWith('INTERVALS'))).toEqual([
      { code: 'INTERVALS_OVERLAP', readingIds: ['b', 'c'], minutes: 270, firstDay: iso(5), lastDay: iso(6) },
      { code: 'INTERVALS_LEAVE_GAP', readingIds: ['c', 'd'], minutes: 75, firstDay: iso(6), lastDay: iso(7) },
    ])
  })

  it('refuses days that are not real or run backwards', () => {
    expect(() => arrangeReadings([reading('back', 6, 5, 1)], week)).toThrow('OUT_OF_DOMAIN')
    expect(() => arrangeReadings([], { fromDay: iso(10), toDay: iso(4) })).toThrow('OUT_OF_DOMAIN')
    expect(() => arrangeReadings([], { fromDay: '2026-02-30', toDay: iso(4) })).toThrow('OUT_OF_DOMAIN')
  })
})

describe('wordArrangementNote', () => {
  it('says days, amounts and what to do, in either language', () => {
    const readings = [reading('sum', 4, 7, 62), reading('z5', 5, 5, 3)]
    const note = notes(readings).find(({ code }) => code === 'TOTAL_HOLDS_READINGS')
    if (note === undefined) throw new Error('no such note')
    expect(wordArrangementNote(note, 'in')).toBe(
      'The total for 2026-05-04 to 2026-05-07 also holds days that were read singly; 0.59 in would be left for the other 3. Say which days it covers.',
    )
    expect(wordArrangementNote(note, 'mm', 'es')).toContain('quedarían 15,0 mm para los otros 3')
  })
  it('a silence is told with the reading that may hold its water', () => {
    const [note] = notes([reading('mon', 6, 6, 62)])
    if (note === undefined) throw new Error('no such note')
    expect(wordArrangementNote(note, 'in')).toBe(
      'No reading for 2026-05-04 to 2026-05-05. The reading of 2026-05-06 may hold that water too.',
    )
  })
})
