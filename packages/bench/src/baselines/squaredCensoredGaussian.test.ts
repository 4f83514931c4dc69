import { describe, expect, it } from 'vitest'
import { normalCdf } from './normalCdf.ts'
import { crpsOfSquaredCensoredMm } from './squaredCensoredGaussian.ts'

describe('normalCdf', () => {
  it('matches tabulated values: 0.975 at 1.959963984540054, 2.866515718791933e-7 at -5', () => {
    expect(normalCdf(1.959963984540054)).toBeCloseTo(0.975, 13)
    expect(normalCdf(-5) / 2.866515718791933e-7).toBeCloseTo(1, 10)
    expect(normalCdf(-10) / 7.619853024160527e-24).toBeCloseTo(1, 6)
  })
})

describe('crpsOfSquaredCensoredMm', () => {
  it('matches numerical integration in 25-digit arithmetic (mpmath, computed apart from this project)', () => {
    expect(crpsOfSquaredCensoredMm(0, 1, 0)).toBeCloseTo(0.09084505690810467, 12)
    expect(crpsOfSquaredCensoredMm(1, 0.5, 0)).toBeCloseTo(0.6829355206715683, 12)
    expect(crpsOfSquaredCensoredMm(1, 0.5, 1)).toBeCloseTo(0.23370444483169364, 12)
  })

  it('is the absolute error of a sure amount', () => {
    expect(crpsOfSquaredCensoredMm(3, 0, 4)).toBe(5)
    expect(crpsOfSquaredCensoredMm(-3, 0, 4)).toBe(4)
  })

  it('lies between 0 and the absolute error of the mean for a narrow distribution', () => {
    const crpsMm = crpsOfSquaredCensoredMm(4, 0.01, 15)
    expect(crpsMm).toBeGreaterThan(0.9)
    expect(crpsMm).toBeLessThan(1)
  })
})
