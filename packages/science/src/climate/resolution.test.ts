import { describe, expect, it } from 'vitest'
import { type DailyTable, emptyDailyTable } from '../network/dailyTable.ts'
import { seededRandom } from '../stats/seededRandom.ts'
import { findResolutionMm, isMultiple } from './resolution.ts'

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

describe('isMultiple', () => {
  it('takes 0.76 mm for three hundredths of an inch, which are 0.762 mm', () => {
    expect([0.76, 2.54, 12.7].map((mm) => isMultiple(mm, 0.254))).toEqual([true, true, true])
    expect([0.7, 2.6, 12.8].map((mm) => isMultiple(mm, 0.254))).toEqual([false, false, false])
  })
})
