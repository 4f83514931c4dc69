import { describe, expect, it } from 'vitest'
import { averagePrecision, limitAtFalseAlarms, recallAbove } from './rankedScores.ts'

describe('averagePrecision', () => {
  it("matches the example in scikit-learn's documentation of average_precision_score: 0.83", () => {
    expect(averagePrecision(Float64Array.of(0.35, 0.8), Float64Array.of(0.1, 0.4))).toBeCloseTo(0.8333, 4)
  })

  it('takes ties together: one wrong and one good reading at the same score have precision 1/2', () => {
    expect(averagePrecision(Float64Array.of(0.9, 0.5), Float64Array.of(0.5, 0.1))).toBeCloseTo(
      0.5 * 1 + 0.5 * (2 / 3),
      12,
    )
  })

  it('is the share of wrong readings when every score is the same', () => {
    expect(averagePrecision(new Float64Array(3), new Float64Array(7))).toBeCloseTo(0.3, 12)
  })

  it('is NaN when nothing is wrong', () => {
    expect(averagePrecision(new Float64Array(0), Float64Array.of(1))).toBeNaN()
  })
})

describe('limitAtFalseAlarms', () => {
  const good = Float64Array.from({ length: 200 }, (_, index) => ((index * 77) % 200) / 200)

  it('lets at most the wanted share of good readings above it, here exactly 2 of 200', () => {
    const limit = limitAtFalseAlarms(good, 0.01)
    expect(good.filter((score) => score > limit).length).toBe(2)
  })

  it('does not split a tie: the tied readings stay below', () => {
    const tied = Float64Array.from({ length: 100 }, (_, index) => (index < 5 ? 1 : 0))
    expect(limitAtFalseAlarms(tied, 0.01)).toBe(1)
    expect(recallAbove(Float64Array.of(1, 1, 2), 1)).toBeCloseTo(1 / 3, 12)
  })
})
