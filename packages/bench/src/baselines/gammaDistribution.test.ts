import { describe, expect, it } from 'vitest'
import { gammaCdf, gammaUpper, logGamma, thomShape } from './gammaDistribution.ts'

describe('gamma distribution', () => {
  it('P(1, x) is 1 - exp(-x) on both branches', () => {
    for (const x of [0.01, 0.7, 1.9, 2.5, 30]) expect(gammaCdf(1, x)).toBeCloseTo(1 - Math.exp(-x), 12)
  })

  it('P(2, x) is 1 - (1 + x) exp(-x), and its upper tail keeps its digits', () => {
    expect(gammaCdf(2, 1.3)).toBeCloseTo(1 - 2.3 * Math.exp(-1.3), 12)
    expect(gammaUpper(2, 60) / (61 * Math.exp(-60))).toBeCloseTo(1, 10)
  })

  it('logGamma(1/2) is ln(sqrt(pi)) and logGamma(11) is ln(10!)', () => {
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 12)
    expect(logGamma(11)).toBeCloseTo(Math.log(3_628_800), 10)
  })

  it('thomShape gives about 1 for an exponential, whose ln(mean) - mean(ln) is 0.5772', () => {
    expect(thomShape(0.577215664901533)).toBeGreaterThan(0.98)
    expect(thomShape(0.577215664901533)).toBeLessThan(1.02)
  })
})
