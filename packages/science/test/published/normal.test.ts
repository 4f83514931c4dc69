import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import {
  logNormalCdf,
  logNormalInterval,
  normalCdf,
  normalHazardBelow,
  normalInterval,
  normalPdf,
} from '../../src/stats/normalCdf.ts'
import { normalQuantile, normalQuantileOfLog } from '../../src/stats/normalQuantile.ts'

// Source: 40-digit arithmetic (mpmath), rounded to double; the file says so itself. Free to use.
const table = JSON.parse(readFileSync(new URL('./fixtures/normal.json', import.meta.url), 'utf8')) as {
  cdf: { z: number; cdf: number; sf: number; pdf: number }[]
  quantile: { p: number; z: number }[]
}

/** Largest error relative to the value wanted. */
const apart = (got: number, wanted: number): number => Math.abs(got - wanted) / Math.max(1e-300, Math.abs(wanted))

describe('the standard normal against 40-digit tables', () => {
  it('gives both tails and the density of all 33 scores to 1e-13', () => {
    expect(table.cdf).toHaveLength(33)
    for (const row of table.cdf) {
      expect(apart(normalCdf(row.z), row.cdf)).toBeLessThan(1e-13)
      expect(apart(normalCdf(-row.z), row.sf)).toBeLessThan(1e-13)
      expect(apart(normalPdf(row.z), row.pdf)).toBeLessThan(1e-13)
    }
  })

  it('gives all 27 quantiles to 1e-13, down to a share of 1e-12', () => {
    expect(table.quantile).toHaveLength(27)
    for (const row of table.quantile) expect(Math.abs(normalQuantile(row.p) - row.z)).toBeLessThan(1e-13 * 10)
  })

  it('keeps its digits far down the tail', () => {
    // Source: scipy 1.17 special.ndtr and log_ndtr.
    const tails: [number, number][] = [
      [-30, 4.906713927147908e-198],
      [-20, 2.7536241186061556e-89],
      [-12, 1.776482112077653e-33],
      [-7, 1.279812543885835e-12],
      [-5.7, 5.99037140106353e-9],
    ]
    for (const [z, wanted] of tails) expect(apart(normalCdf(z), wanted)).toBeLessThan(1e-13)
    const logs: [number, number][] = [
      [-1000, -500007.8266948122],
      [-100, -5005.524208694205],
      [-40, -804.6084420137539],
      [-10, -53.23128515051248],
      [-5.3, -16.664525302382476],
      [-1, -1.8410216450092634],
      [3, -0.0013508099647481925],
      [7, -1.2798125438866539e-12],
    ]
    for (const [z, wanted] of logs) {
      expect(apart(logNormalCdf(z), wanted)).toBeLessThan(1e-13)
      if (z < -5) expect(apart(normalQuantileOfLog(wanted), z)).toBeLessThan(1e-8)
    }
  })
})

describe('intervals of the standard normal', () => {
  it('an interval in the upper tail is its mirror image in the lower, to the last digit', () => {
    expect(normalInterval(8, 9.5)).toBe(normalInterval(-9.5, -8))
    expect(logNormalInterval(31, 33)).toBe(logNormalInterval(-33, -31))
  })

  it('neighbouring intervals add up, and an empty one has no share', () => {
    const whole = normalInterval(-1.3, 2.1)
    expect(normalInterval(-1.3, 0.4) + normalInterval(0.4, 2.1)).toBeCloseTo(whole, 14)
    expect(normalInterval(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)).toBe(1)
    expect(normalInterval(2, 2)).toBe(0)
    expect(logNormalInterval(2, 1)).toBe(Number.NEGATIVE_INFINITY)
    expect(normalInterval(Number.NaN, 1)).toBeNaN()
  })

  it('the hazard is density over share, and near -z far down', () => {
    expect(normalHazardBelow(-1.2)).toBeCloseTo(normalPdf(-1.2) / normalCdf(-1.2), 14)
    expect(normalHazardBelow(-200)).toBeCloseTo(200.005, 3)
  })

  it('normalQuantile answers the ends and refuses what is no share', () => {
    expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY)
    expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY)
    expect(normalQuantile(1.2)).toBeNaN()
    expect(normalQuantile(-0.1)).toBeNaN()
    expect(normalQuantile(Number.NaN)).toBeNaN()
  })
})
