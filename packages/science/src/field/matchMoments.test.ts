import { describe, expect, it } from 'vitest'
import { normalPdf } from '../stats/normalCdf.ts'
import { matchMoments, type Site } from './matchMoments.ts'

/** Mean, variance and share of a normal cut to a cell, by adding up thin slices. */
function bySlices(mean: number, variance: number, low: number, high: number) {
  const sd = Math.sqrt(variance)
  const from = Math.max(low, mean - 12 * sd)
  const n = 200_000
  let share = 0
  let first = 0
  let second = 0
  for (let k = 0; k < n; k++) {
    const x = from + ((k + 0.5) * (high - from)) / n
    const weight = (normalPdf((x - mean) / sd) / sd) * ((high - from) / n)
    share += weight
    first += weight * x
    second += weight * x * x
  }
  return { share, mean: first / share, variance: second / share - (first / share) ** 2 }
}

describe('matchMoments', () => {
  it.each([
    [0.3, 1.4, Number.NEGATIVE_INFINITY, 0.1],
    [2.5, 0.6, Number.NEGATIVE_INFINITY, -0.4],
    [-1, 2, Number.NEGATIVE_INFINITY, 0.8],
    [0.2, 0.9, 0.4, 1.1],
    [-1.5, 0.7, 0.4, 0.6],
  ])(
    'belief N(%d, %d) met by the cell (%d, %d): belief times site has the moments of the part inside',
    (mean, variance, low, high) => {
      const site: Site = { mean: 0, variance: 0, logShare: 0 }
      matchMoments(mean, variance, low, high, site)
      const wanted = bySlices(mean, variance, low, high)
      const precision = 1 / variance + 1 / site.variance
      expect(site.logShare).toBeCloseTo(Math.log(wanted.share), 4)
      expect((mean / variance + site.mean / site.variance) / precision).toBeCloseTo(wanted.mean, 4)
      expect(1 / precision).toBeCloseTo(wanted.variance, 3)
    },
  )

  it('stays finite where belief and cell hardly meet, and leans on the near end', () => {
    const site: Site = { mean: 0, variance: 0, logShare: 0 }
    for (const [mean, low, high] of [
      [60, Number.NEGATIVE_INFINITY, 0],
      [60, -1, 0],
      [-60, 1, 1.2],
    ] as const) {
      matchMoments(mean, 1, low, high, site)
      const together = (mean + site.mean / site.variance) / (1 + 1 / site.variance)
      expect(Math.abs(together - (mean > 0 ? high : low))).toBeLessThan(0.15)
      expect(site.logShare).toBeLessThan(-1000)
      expect(site.variance).toBeGreaterThan(0)
    }
  })
})
