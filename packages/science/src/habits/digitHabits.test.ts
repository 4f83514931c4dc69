import { describe, expect, it } from 'vitest'
import { emptyDailyTable } from '../network/dailyTable.ts'
import { seededRandom } from '../stats/seededRandom.ts'
import { coarseHabit, offStepsHabit, roundingHabits } from './digitHabits.ts'
import { digitsOf, type GaugeDigits } from './gaugeDigits.ts'

const gaugeCount = 300
const readings = 260
const random = seededRandom(4)

/** Exponential amounts of 3.5 mm on average, read to 0.1 mm, some rounded to fives or tens of tenths. */
function gaugesThat(toFives: number, toTens: number): GaugeDigits[] {
  const table = emptyDailyTable(gaugeCount, 20_000, readings)
  for (let i = 0; i < table.amountMm.length; i++) {
    const tenths = Math.ceil(-35 * Math.log(1 - random()))
    const draw = random()
    const every = draw < toFives ? 5 : draw < toFives + toTens ? 10 : 1
    table.amountMm[i] = (every * Math.round(tenths / every)) / 10
    table.spanDays[i] = 1
  }
  return digitsOf(table, new Float64Array(gaugeCount).fill(0.1))
}

describe('roundingHabits', () => {
  it.each([
    [0.4, 0],
    [0, 0.3],
    [0.25, 0.35],
  ])('observers who round %f to fives and %f to tens: four of five intervals hold the share', (fives, tens) => {
    const seen = gaugesThat(fives, tens).map(roundingHabits)
    for (const [k, share] of [fives, tens].entries()) {
      if (share === 0) continue
      const inside = seen.filter((habits) => habits[k]!.low <= share && habits[k]!.high >= share).length / gaugeCount
      expect(inside).toBeGreaterThan(0.72)
      expect(inside).toBeLessThan(0.88)
    }
  })

  it('of 300 careful observers hardly one is said to round', () => {
    const told = gaugesThat(0, 0).filter((digits) => roundingHabits(digits).some(({ sure }) => sure > 0.9))
    expect(told.length).toBeLessThanOrEqual(2)
  })

  it('who rounds to fives is hardly ever said to round to tens', () => {
    const told = gaugesThat(0.5, 0).filter((digits) => roundingHabits(digits)[1]!.sure > 0.9)
    expect(told.length).toBeLessThanOrEqual(3)
  })

  it('says nothing from a few amounts', () => {
    const table = emptyDailyTable(1, 20_000, 40)
    table.amountMm.fill(5)
    table.spanDays.fill(1)
    expect(roundingHabits(digitsOf(table, Float64Array.of(0.1))[0]!)).toEqual([])
  })
})

describe('steps', () => {
  const table = emptyDailyTable(2, 20_000, 120)
  for (let row = 0; row < 120; row++) {
    // The first reads even tenths but for every fifth reading, the second whole millimetres.
    table.amountMm[row * 2] = row % 5 === 0 ? 2.3 + row / 5 : 0.2 * (1 + (row % 40))
    table.amountMm[row * 2 + 1] = 1 + (row % 17)
  }
  table.spanDays.fill(1)
  const [between, whole] = digitsOf(table, Float64Array.of(0.2, 1))

  it('counts readings between the steps of the gauge', () => {
    const habit = offStepsHabit(between!, 0)
    expect(habit?.value).toBeCloseTo(0.2, 9)
    expect(habit?.sure).toBeGreaterThan(0.99)
    expect(offStepsHabit(between!, 0.2)?.sure).toBeLessThan(0.1)
    expect(offStepsHabit(whole!, 0)?.value).toBe(0)
  })

  it('whole millimetres are coarse where others read tenths, and not where others read whole ones', () => {
    expect(coarseHabit(whole!, 0.1)?.sure).toBeGreaterThan(0.99)
    expect(coarseHabit(whole!, 1)?.sure).toBe(0)
    expect(coarseHabit(between!, 0.1)?.sure).toBe(0)
  })
})
