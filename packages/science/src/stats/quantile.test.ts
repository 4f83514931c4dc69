import { describe, expect, it } from 'vitest'
import { quantile, quantileOfSorted } from './quantile.ts'

describe('quantile', () => {
  it('of 1 to 10 gives 2.8 at 0.2 and 8.2 at 0.8 (type 7 by its formula)', () => {
    const shuffled = [7, 2, 10, 5, 1, 9, 3, 8, 6, 4]
    expect(quantile(shuffled, 0.2)).toBeCloseTo(2.8, 12)
    expect(quantile(shuffled, 0.8)).toBeCloseTo(8.2, 12)
    expect(shuffled[0]).toBe(7)
  })

  it('gives the ends at 0 and 1, and the one value there is', () => {
    expect(quantileOfSorted([1.5, 2, 9], 0)).toBe(1.5)
    expect(quantileOfSorted([1.5, 2, 9], 1)).toBe(9)
    expect(quantileOfSorted([3.3], 0.4)).toBe(3.3)
  })

  it('skips missing values, and answers NaN when nothing is left', () => {
    expect(quantile([Number.NaN, 4, Number.NaN, 8], 0.5)).toBe(6)
    expect(quantile([Number.NaN], 0.5)).toBeNaN()
  })
})
