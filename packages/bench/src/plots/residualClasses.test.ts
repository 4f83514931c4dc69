import { describe, expect, it } from 'vitest'
import { isBeyondChance, residualClasses, residualClassOf } from './residualClasses.ts'

describe('residualClassOf', () => {
  it('puts a calibrated gauge into the middle, and each side as far out as the other', () => {
    expect([0.3, 0.38, 0.45, 0.5, 0.54, 0.6, 0.7].map((meanPit) => residualClassOf({ meanPit }))).toEqual([
      0, 1, 2, 3, 4, 5, 6,
    ])
    expect(residualClasses).toHaveLength(7)
    expect(residualClasses[1]!.radius).toBe(residualClasses[5]!.radius)
  })
})

describe('isBeyondChance', () => {
  it('begins, for a mean of 100 uniforms, at 0.5 ± 0.0577 (two standard errors, by hand)', () => {
    expect([0.441, 0.443, 0.557, 0.559].map((meanPit) => isBeyondChance({ meanPit, count: 100 }))).toEqual([
      true,
      false,
      false,
      true,
    ])
  })
})
