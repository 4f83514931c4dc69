import { describe, expect, it } from 'vitest'
import { type DailyTable, emptyDailyTable } from '../network/dailyTable.ts'
import { seededRandom } from '../stats/seededRandom.ts'
import { isOnStep, learnRounding, noRounding } from './rounding.ts'

/** Gauges whose exact amounts are rounded to one of their steps, each with its share; written to hundredths. */
function readBy(gauges: (readonly (readonly [stepMm: number, share: number])[])[], readings: number): DailyTable {
  const random = seededRandom(11)
  const table = emptyDailyTable(gauges.length, 20_000, readings)
  gauges.forEach((steps, g) => {
    for (let d = 0; d < readings; d++) {
      const lot = random()
      const upTo = steps.map((_, s) => steps.slice(0, s + 1).reduce((sum, [, share]) => sum + share, 0))
      const stepMm =
        steps[
          Math.max(
            0,
            upTo.findIndex((share) => lot < share),
          )
        ]![0]
      const exactMm = 2 - 12 * Math.log(1 - random())
      table.amountMm[d * gauges.length + g] = Math.round(100 * Math.round(exactMm / stepMm) * stepMm) / 100
      table.spanDays[d * gauges.length + g] = 1
    }
  })
  return table
}

const sharesOf = (table: DailyTable, gauge: number): Record<string, number> => {
  const { stepsMm, share } = learnRounding(table)
  return Object.fromEntries(stepsMm.map((step, s) => [step, share[gauge * stepsMm.length + s]!]))
}

describe('learnRounding', () => {
  it('finds the shares of a gauge that is mostly read to every second mark, now and then to whole millimetres', () => {
    const table = readBy([[[0.2, 0.7], [1, 0.2], [0.1, 0.1]], [[0.1, 1]]], 1500) // biome-ignore format: a row each
    const found = sharesOf(table, 0)
    expect(Math.abs(found[0.2]! - 0.7)).toBeLessThan(0.06)
    expect(Math.abs(found[1]! - 0.2)).toBeLessThan(0.05)
    expect(sharesOf(table, 1)[0.1]!).toBeGreaterThan(0.9)
  })

  it('knows hundredths of an inch in written millimetres, and a network that writes so from one that writes tenths', () => {
    const inches = learnRounding(readBy([[[0.254, 1]], [[0.254, 0.6], [2.54, 0.4]]], 800)) // biome-ignore format: a row each
    expect(inches.writtenMm).toBe(0.01)
    const tenth = inches.stepsMm.indexOf(2.54)
    expect(Math.abs(inches.share[inches.stepsMm.length + tenth]! - 0.4)).toBeLessThan(0.06)
    expect(inches.share[tenth]!).toBeLessThan(0.05)
    expect(learnRounding(readBy([[[0.1, 1]], [[0.2, 1]]], 300)).writtenMm).toBe(0.1)
  })

  it('lets a few mistakes off the marks pass without taking them for a way of reading', () => {
    const table = readBy([[[0.2, 1]], [[0.2, 1]]], 600)
    for (let d = 0; d < 600; d += 60) table.amountMm[2 * d] = 4.3 + 0.2 * (d % 7)
    expect(sharesOf(table, 0)[0.1]!).toBeLessThan(0.02)
  })

  it('takes inches and tenths of a millimetre alike where nothing is known yet', () => {
    const found = sharesOf(emptyDailyTable(2, 20_000, 5), 1)
    expect(found[0.254]!).toBeGreaterThan(0.25)
    expect(found[0.1]!).toBeGreaterThan(0.25)
  })

  it('gives shares that sum to 1 with any history, none included', () => {
    for (const table of [readBy([[[0.5, 1]], [[5, 1]]], 40), emptyDailyTable(2, 20_000, 5)]) {
      const { stepsMm, share } = learnRounding(table)
      for (let g = 0; g < 2; g++)
        expect(share.subarray(g * stepsMm.length, (g + 1) * stepsMm.length).reduce((a, b) => a + b)).toBeCloseTo(1, 9)
    }
  })
})

it('noRounding is read as finely as is written', () => {
  const like = learnRounding(readBy([[[1, 1]], [[2, 1]]], 60))
  expect([...noRounding(like, 3).share].filter((share) => share === 1)).toHaveLength(3)
})

it('isOnStep takes 19.3 mm for 0.76 mm converted twice, but not 19.6', () => {
  // 0.76 mm typed as inches is 19.304 mm; a tenth written leaves ± 0.05 / 25.4 mm.
  expect(isOnStep(19.3 / 25.4, 0.01, 0.05 / 25.4)).toBe(true)
  expect(isOnStep(19.6 / 25.4, 0.254, 0.05 / 25.4)).toBe(false)
})
