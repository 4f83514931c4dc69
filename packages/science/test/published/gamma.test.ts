import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { incompleteGammaAbove, incompleteGammaBelow } from '../../src/stats/incompleteGamma.ts'
import { digamma, logGamma } from '../../src/stats/logGamma.ts'

// Source: 25- to 40-digit arithmetic (mpmath) for the gamma functions, scipy 1.10 for chi-square.
const table = JSON.parse(readFileSync(new URL('./fixtures/distributions.json', import.meta.url), 'utf8')) as {
  gammainc: { a: number; x: number; P: number }[]
  lgamma: { x: number; value: number }[]
  digamma: { x: number; value: number }[]
  chi2: { x: number; df: number; cdf: number; sf: number }[]
}

describe('gamma functions against published values', () => {
  it('log-gamma and digamma to 1e-12', () => {
    expect(table.lgamma.length + table.digamma.length).toBe(20)
    for (const row of table.lgamma)
      expect(Math.abs(logGamma(row.x) - row.value)).toBeLessThan(1e-12 * Math.max(1, row.value))
    for (const row of table.digamma)
      expect(Math.abs(digamma(row.x) - row.value)).toBeLessThan(1e-12 * Math.max(1, Math.abs(row.value)))
  })

  it('incomplete gamma to 1e-12', () => {
    expect(table.gammainc).toHaveLength(9)
    for (const row of table.gammainc) {
      expect(Math.abs(incompleteGammaBelow(row.a, row.x) / row.P - 1)).toBeLessThan(1e-12)
      expect(incompleteGammaBelow(row.a, row.x) + incompleteGammaAbove(row.a, row.x)).toBeCloseTo(1, 14)
    }
  })

  it('both tails of chi-square to 1e-12, as halves of a gamma', () => {
    expect(table.chi2).toHaveLength(8)
    for (const row of table.chi2) {
      expect(Math.abs(incompleteGammaBelow(row.df / 2, row.x / 2) / row.cdf - 1)).toBeLessThan(1e-12)
      expect(Math.abs(incompleteGammaAbove(row.df / 2, row.x / 2) / row.sf - 1)).toBeLessThan(1e-12)
    }
  })

  it('arguments without an answer give NaN', () => {
    expect(logGamma(-1)).toBeNaN()
    expect(digamma(0)).toBeNaN()
    expect(incompleteGammaBelow(2, -0.1)).toBeNaN()
  })
})
