import { describe, expect, it } from 'vitest'
import { epochDayFromDate } from '../reading/epochDay.ts'
import { monthOfEpochDay } from './climate.ts'

describe('monthOfEpochDay', () => {
  it('agrees with the platform calendar on every day from 1850 to 2150', () => {
    const wrong: number[] = []
    for (let day = -43_829; day < 65_744; day++)
      if (monthOfEpochDay(day) !== new Date(day * 86_400_000).getUTCMonth()) wrong.push(day)
    expect(wrong).toEqual([])
  })

  it('knows leap days: 29 February is February, the day after is March', () => {
    for (const year of [1904, 2000, 2024]) {
      const leapDay = epochDayFromDate(year, 2, 29)
      expect([leapDay - 29, leapDay, leapDay + 1].map(monthOfEpochDay)).toEqual([0, 1, 2])
    }
  })
})
