import { describe, expect, it } from 'vitest'
import { clockFromInstant, instantFromClock, instantMinutesAgo } from './clockTimes.ts'

// Built by the phone's own clock, as in life: the tests hold in any zone.
const at = (day: number, hours: number, minutes: number) => new Date(2026, 5, day, hours, minutes).getTime()

describe('times by the phone’s clock', () => {
  it('a time is today where that has been, else yesterday', () => {
    expect(instantFromClock('16:10', at(9, 16, 40))).toBe(new Date(at(9, 16, 10)).toISOString())
    expect(instantFromClock('23:55', at(9, 0, 20))).toBe(new Date(at(8, 23, 55)).toISOString())
  })
  it('this very minute, or the next, is now and not yesterday', () => {
    expect(instantFromClock('16:41', at(9, 16, 40))).toBe(new Date(at(9, 16, 41)).toISOString())
  })
  it('comes back as it was typed', () => {
    expect(clockFromInstant(instantFromClock('07:05', at(9, 16, 40)))).toBe('07:05')
    expect(clockFromInstant(null)).toBe('')
  })
  it('is none where nothing or nonsense was typed', () => {
    for (const text of ['', '7', '24:00', '12:60', 'noon']) expect(instantFromClock(text, at(9, 16, 40))).toBeNull()
  })
  it('counts minutes back', () => {
    expect(instantMinutesAgo(15, Date.UTC(2026, 5, 9, 0, 5))).toBe('2026-06-08T23:50:00.000Z')
  })
})
