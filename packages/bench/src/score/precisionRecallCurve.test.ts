import { describe, expect, it } from 'vitest'
import { precisionRecallCurve } from './precisionRecallCurve.ts'

describe('precisionRecallCurve', () => {
  it("passes through the points of the example in scikit-learn's documentation of precision_recall_curve", () => {
    const curve = precisionRecallCurve(Float64Array.of(0.35, 0.8), Float64Array.of(0.1, 0.4))
    expect(curve.recall).toEqual([0.5, 1])
    expect(curve.precision[0]).toBe(1)
    expect(curve.precision[1]).toBeCloseTo(2 / 3, 12)
  })

  it('lets ties enter together, so that a score that says nothing has the precision of a guess', () => {
    const curve = precisionRecallCurve(new Float64Array(3).fill(0.2), new Float64Array(9).fill(0.2))
    expect(curve).toEqual({ recall: [1], precision: [0.25] })
  })

  it('keeps at most the points asked for, the last at full recall', () => {
    const wrong = Float64Array.from({ length: 950 }, (_, i) => i / 950)
    const good = Float64Array.from({ length: 400 }, (_, i) => (i / 400) ** 2)
    const curve = precisionRecallCurve(wrong, good, 40)
    expect(curve.recall).toHaveLength(40)
    expect(curve.recall.at(-1)).toBe(1)
    expect(curve.precision.at(-1)).toBeCloseTo(950 / 1350, 12)
  })
})
