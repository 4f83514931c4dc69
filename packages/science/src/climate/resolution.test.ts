import { describe, expect, it } from 'vitest'
import { type DailyTable, emptyDailyTable } from '../network/dailyTable.ts'
import { seededRandom } from '../stats/seededRandom.ts'
import { findResolutionMm, findSteps, isMultiple } from './resolution.ts'

/** Gauges that read steps of `stepsMm`, written to hundredths of a millimetre; `readings[g]` wet readings each. */
function readIn(stepsMm: readonly number[], readings: readonly number[], slipShare = 0): DailyTable {
  const random = seededRandom(5)
  const table = emptyDailyTable(stepsMm.length, 20_000, Math.max(...readings, 1))
  stepsMm.forEach((stepMm, g) => {
    for (let d = 0; d < readings[g]!; d++) {
      const exactMm = (1 + Math.floor(120 * random())) * stepMm
      const slipped = random() < slipShare ? exactMm + 0.037 : exactMm
      table.amountMm[d * stepsMm.length + g] = Math.round(100 * slipped) / 100
      table.spanDays[d * stepsMm.length + g] = 1
    }
  })
  return table
}

describe('findResolutionMm', () => {
  it('tells gauges read to 0.1, 0.2, 0.5, 1 mm and to 0.01 in from their own readings', () => {
    const stepsMm = [0.1, 0.2, 0.5, 1, 0.254]
    expect([...findResolutionMm(readIn(stepsMm, [80, 90, 100, 110, 120]))]).toEqual(stepsMm)
  })

  it('is not misled by a few readings off the step', () => {
    expect([...findResolutionMm(readIn([0.2, 0.254], [400, 300], 0.04))]).toEqual([0.2, 0.254])
  })

  it('takes the step of the network where a gauge has too few readings, and 0.1 mm where there are none at all', () => {
    expect(findResolutionMm(readIn([0.254, 0.254, 1], [90, 70, 3]))[2]).toBe(0.254)
    expect([...findResolutionMm(readIn([0.254, 1], [0, 0]))]).toEqual([0.1, 0.1])
  })

  it('does not look at totals over several days', () => {
    const table = readIn([0.2, 0.2], [60, 50])
    for (let d = 0; d < 10; d++) {
      table.amountMm[2 * d] = 3.33
      table.spanDays[2 * d] = 3
    }
    expect(findResolutionMm(table)[0]).toBe(0.2)
  })
})

describe('findSteps', () => {
  it('tells a network that writes hundredths of a millimetre from one that writes tenths', () => {
    const written = (stepsMm: number[]) => {
      const table = readIn(stepsMm, [120, 130])
      return findSteps(table, findResolutionMm(table)).writtenMm
    }
    expect(written([0.254, 0.254])).toBe(0.01)
    expect(written([0.1, 0.2])).toBe(0.1)
  })

  it('knows a gauge that often reads between its steps from one that hardly ever does', () => {
    const table = readIn([0.2, 0.2], [300, 320])
    for (let d = 0; d < 300; d += 4) table.amountMm[2 * d] = 0.3 + 0.2 * (d % 9)
    const { offStepChance } = findSteps(table, Float64Array.of(0.2, 0.2))
    expect(offStepChance[0]!).toBeGreaterThan(0.15)
    expect(offStepChance[1]!).toBeLessThan(0.01)
    expect(offStepChance[1]!).toBeGreaterThan(0)
  })
})

describe('isMultiple', () => {
  it('takes 0.76 mm for three hundredths of an inch, which are 0.762 mm', () => {
    expect([0.76, 2.54, 12.7].map((mm) => isMultiple(mm, 0.254))).toEqual([true, true, true])
    expect([0.7, 2.6, 12.8].map((mm) => isMultiple(mm, 0.254))).toEqual([false, false, false])
  })
})
