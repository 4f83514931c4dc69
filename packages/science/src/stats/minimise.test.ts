import { describe, expect, it } from 'vitest'
import { minimise } from './minimise.ts'

describe('minimise', () => {
  it('finds (1, 1) at the bottom of Rosenbrock’s valley from (-1.2, 1)', () => {
    const found = minimise((at) => 100 * (at[1]! - at[0]! ** 2) ** 2 + (1 - at[0]!) ** 2, [-1.2, 1], {
      steps: [0.5, 0.3],
      mostEvaluations: 2000,
      tolerance: 1e-14,
    })
    expect(found.at[0]).toBeCloseTo(1, 5)
    expect(found.at[1]).toBeCloseTo(1, 5)
  })

  it('walks round places where the function has no value, and stops at its limit', () => {
    const found = minimise((at) => (at[0]! < 0.3 ? Number.NaN : (at[0]! - 0.5) ** 2 + (at[1]! + 2) ** 2), [2, 1], {
      steps: [-1.9, 0.5],
      mostEvaluations: 300,
      tolerance: 1e-12,
    })
    expect(found.at[0]).toBeCloseTo(0.5, 4)
    expect(found.at[1]).toBeCloseTo(-2, 4)
    expect(found.evaluations).toBeLessThanOrEqual(303)
  })
})
