import { describe, expect, it } from 'vitest'
import { descend } from './descend.ts'

describe('descend', () => {
  it('finds the bottom of a tilted bowl in three variables of unlike size', () => {
    const loss = (at: Float64Array): number =>
      (at[0]! - 3) ** 2 + 1e-4 * (at[1]! + 200) ** 2 + 5 * (at[2]! - 0.2) ** 2 + 0.01 * (at[0]! - 3) * (at[1]! + 200)
    const found = descend(loss, [0, 0, 0], { scales: [1, 100, 0.3], mostSteps: 60, tolerance: 1e-9, difference: 1e-4 })
    expect(found.at[0]).toBeCloseTo(3, 2)
    expect(found.at[1]).toBeCloseTo(-200, 0)
    expect(found.at[2]).toBeCloseTo(0.2, 3)
    expect(found.value).toBeLessThan(1e-4)
  })

  it('steps back from places without a value, and needs few calls', () => {
    const loss = (at: Float64Array): number => (at[0]! > 2 ? Number.NaN : at[0]! - Math.log(at[0]! + 3) + at[1]! ** 2)
    const found = descend(loss, [1.9, 1.5], { scales: [1, 1], mostSteps: 40, tolerance: 1e-8, difference: 1e-4 })
    expect(found.at[0]).toBeCloseTo(-2, 2)
    expect(Math.abs(found.at[1]!)).toBeLessThan(0.01)
    expect(found.evaluations).toBeLessThan(100)
  })
})
