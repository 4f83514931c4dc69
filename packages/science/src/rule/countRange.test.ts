import { describe, expect, it } from 'vitest'
import { countRange } from './countRange.ts'

describe('countRange', () => {
  it.each([
    [0.7, 0.9, 0.8, 0, 2],
    [12.5, 40, 0.8, 5, 21],
    [12.5, 40, 0.95, 3, 27],
    [150, 900, 0.8, 113, 189],
    [0.2, 1.7, 0.95, 0, 2],
  ])(
    'mean %d, variance %d, %d within: the quantiles of scipy.stats.nbinom (SciPy 1.17.1)',
    (mean, variance, share, low, high) => {
      expect(countRange(mean, variance, share)).toEqual({ low, high })
    },
  )

  it('is that of scipy.stats.poisson where the count scatters no more than chance: mean 3, 1 to 5', () => {
    expect(countRange(3, 3)).toEqual({ low: 1, high: 5 })
    expect(countRange(3, 0.4)).toEqual({ low: 1, high: 5 })
  })

  it('is within one in a hundred of the exact one where the count is large: mean 2000, variance 9000, 1879 to 2122', () => {
    const { low, high } = countRange(2000, 9000)
    expect(Math.abs(low - 1879)).toBeLessThan(8)
    expect(Math.abs(high - 2122)).toBeLessThan(8)
  })

  it('of nothing is nothing, and refuses what is no variance', () => {
    expect(countRange(0, 5)).toEqual({ low: 0, high: 0 })
    expect(() => countRange(1, Number.NaN)).toThrow(/variance NaN/)
  })
})
