import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { crpsCensoredGaussian, crpsGaussian, crpsQuantiles, crpsSquaredCensoredGaussian } from '../../src/stats/crps.ts'
import { normalQuantile } from '../../src/stats/normalQuantile.ts'

// Source: numerical integration of the definition in 25-digit arithmetic (mpmath); the file says so itself.
interface Case {
  mu: number
  sigma: number
  y: number
  crps: number
}
const table = JSON.parse(readFileSync(new URL('./fixtures/crps.json', import.meta.url), 'utf8')) as {
  gaussian: Case[]
  censored_gaussian: Case[]
  squared_censored_gaussian: Case[]
}

describe('the continuous ranked probability score against 25-digit integrals', () => {
  const kinds = [
    ['gaussian', crpsGaussian, 5],
    ['censored_gaussian', crpsCensoredGaussian, 22],
    ['squared_censored_gaussian', crpsSquaredCensoredGaussian, 10],
  ] as const
  it.each(kinds)('%s: every case to 1e-9', (name, score, count) => {
    expect(table[name]).toHaveLength(count)
    for (const one of table[name]) {
      expect(Math.abs(score(one.mu, one.sigma, one.y) - one.crps)).toBeLessThan(1e-9 * Math.max(1, one.crps))
    }
  })

  it('the score of many even quantiles nears that of the distribution itself', () => {
    const n = 4000
    const quantiles = Float64Array.from({ length: n }, (_, k) => Math.max(0, -0.5 + 3 * normalQuantile((k + 0.5) / n)))
    expect(crpsQuantiles(quantiles, 1.2)).toBeCloseTo(0.5825769100054202, 4)
  })

  it('a single certain amount scores its absolute error', () => {
    expect(crpsQuantiles([4.2], 1.7)).toBeCloseTo(2.5, 12)
    expect(crpsQuantiles([4.2], 9.1)).toBeCloseTo(4.9, 12)
  })

  it('the score of an ensemble is its mean distance less half its own spread', () => {
    const members = [0.3, 1.1, 2.9, 7.4]
    let distance = 0
    let spread = 0
    for (const a of members) {
      distance += Math.abs(a - 2.2) / 4
      for (const b of members) spread += Math.abs(a - b) / 32
    }
    expect(crpsQuantiles(members, 2.2)).toBeCloseTo(distance - spread, 12)
  })
})
