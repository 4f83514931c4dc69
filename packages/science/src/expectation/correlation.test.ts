import { describe, expect, it } from 'vitest'
import { pointsAt } from '../../test/support/rainyNetwork.ts'
import { correlationByDistance, correlationByShift, correlationOf } from './correlation.ts'
import { usualCorrelation } from './learnCorrelation.ts'

const gauges = pointsAt([0, 0], [7_000, 1_000], [40_000, -30_000])
const correlation = {
  ...usualCorrelation(3),
  fit: Float64Array.of(1.02, 0.9, 0.7),
  offsetDays: Float64Array.of(0, 1, -0.25),
}

describe('correlation', () => {
  it('falls with distance from below 1 toward what a whole day has in common', () => {
    const values = [0, 500, 5_000, 30_000, 120_000, 900_000, 1e9].map((m) => correlationByDistance(correlation, m))
    expect(values[0]).toBeLessThan(1)
    for (let k = 1; k < values.length; k++) expect(values[k]!).toBeLessThanOrEqual(values[k - 1]!)
    expect(values[6]).toBeCloseTo(correlation.plateau, 12)
  })

  it('of two windows of one day is 1 at no shift, what persists at a day, and falls between and beyond', () => {
    const values = [0, 0.25, 0.5, 0.9, 1, 1.5, 3].map((days) => correlationByShift(correlation, days))
    expect(values[0]).toBeCloseTo(1, 12)
    expect(values[4]).toBeCloseTo(correlation.persistence, 12)
    for (let k = 1; k < values.length; k++) expect(values[k]!).toBeLessThan(values[k - 1]!)
    expect(correlationByShift(correlation, -0.4)).toBe(correlationByShift(correlation, 0.4))
  })

  it('is the same seen from either gauge, the lag turned round', () => {
    for (const lag of [-2, -1, 0, 1, 2])
      for (const [i, j] of [
        [0, 1],
        [1, 2],
        [2, 0],
      ] as const)
        expect(correlationOf(correlation, gauges, i, j, lag)).toBe(correlationOf(correlation, gauges, j, i, -lag))
  })

  it('of a gauge that dates rain a day early is highest with the report of the day after', () => {
    const byLag = [-1, 0, 1, 2].map((lag) => correlationOf(correlation, gauges, 1, 0, lag))
    expect(Math.max(...byLag)).toBe(byLag[2])
    const seenFromTheOther = [-1, 0, 1].map((lag) => correlationOf(correlation, gauges, 0, 1, lag))
    expect(Math.max(...seenFromTheOther)).toBe(seenFromTheOther[0])
  })

  it('is lower for a gauge that fits its surroundings worse', () => {
    const better = { ...correlation, fit: Float64Array.of(1.02, 0.9, 0.95) }
    expect(correlationOf(correlation, gauges, 0, 2, 0)).toBeLessThan(correlationOf(better, gauges, 0, 2, 0))
  })
})
