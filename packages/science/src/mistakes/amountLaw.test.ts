import { describe, expect, it } from 'vitest'
import { sumLaw } from './amountLaw.ts'

describe('sumLaw', () => {
  it('has the mean and variance that it is given, and holds one whole', () => {
    for (const [meanMm, varianceMm2, dry] of [
      [14, 60, 0.1],
      [3, 12, 0.4],
      [0.8, 0.5, 0.02],
    ] as const) {
      const law = sumLaw(meanMm, varianceMm2, dry)
      let total = law.mass(-1, 0)
      let mean = 0
      let squares = 0
      for (let lowMm = 1e-4; lowMm < 4000; lowMm *= 1.01) {
        const mass = law.mass(lowMm, 1.01 * lowMm)
        total += mass
        mean += mass * 1.005 * lowMm
        squares += mass * (1.005 * lowMm) ** 2
      }
      expect(law.mass(-1, 0)).toBe(dry)
      expect(total).toBeCloseTo(1, 4)
      expect(mean / meanMm).toBeCloseTo(1, 2)
      expect((squares - mean * mean) / varianceMm2).toBeCloseTo(1, 1)
    }
  })

  it('quantiles are where the share below is the level, 0 where that share is dry', () => {
    const law = sumLaw(9, 40, 0.25)
    expect(law.quantile(0.2)).toBe(0)
    for (const level of [0.26, 0.5, 0.9, 0.999]) expect(law.mass(-1, law.quantile(level))).toBeCloseTo(level, 9)
  })
})
