import { describe, expect, it } from 'vitest'
import { inverseDistance } from '../../src/krige/inverseDistance.ts'
import { ordinaryKriging } from '../../src/krige/ordinaryKriging.ts'
import { thiessenWeights } from '../../src/krige/thiessenWeights.ts'
import type { Variogram } from '../../src/variogram/variogram.ts'

// Gauges (0,0)=10, (10,0)=20, (0,10)=30. Source of every value: calculated by hand from the formulas, independently.
const gauges = { xM: [0, 10, 0], yM: [0, 0, 10], amountMm: [10, 20, 30] }
const targets = { xM: [3, 5, 20], yM: [3, 5, 20] }
const exponential: Variogram = {
  kind: 'exponential',
  nuggetMm2: 0,
  partialSillMm2: 1,
  practicalRangeM: 10 * Math.log(20),
}

describe('three gauges worked by hand', () => {
  it.each([
    ['exponential', exponential, [17.53216, 20.70424, 21.51321], [0.46814, 0.56277, 1.35994]],
    [
      'with nugget 0.2',
      { ...exponential, nuggetMm2: 0.2 },
      [18.15651, 20.52607, 21.13037],
      [0.74088, 0.82993, 1.62889],
    ],
    [
      'spherical',
      { kind: 'spherical', nuggetMm2: 0, partialSillMm2: 1, practicalRangeM: 15 } as Variogram,
      [17.07229, 20.59421, 20.59421],
      [0.55778, 0.70781, 1.39835],
    ],
  ])('ordinary kriging, %s', (_, variogram, amounts, variances) => {
    const got = ordinaryKriging(gauges, targets, variogram)
    for (let k = 0; k < 3; k++) {
      expect(got.amountMm[k]).toBeCloseTo(amounts[k]!, 5)
      expect(got.varianceMm2[k]).toBeCloseTo(variances[k]!, 5)
    }
  })

  it('gives each gauge its own amount with variance 0, nugget or not', () => {
    const got = ordinaryKriging(gauges, gauges, { ...exponential, nuggetMm2: 0.2 })
    expect(got.amountMm[1]).toBeCloseTo(20, 10)
    expect(got.varianceMm2[2]).toBeCloseTo(0, 10)
  })

  it.each([
    [1, [17.90502, 20, 20.75049]],
    [2, [15.74468, 20, 21.42857]],
    [3, [13.85403, 20, 22.02836]],
  ])('inverse distance, power %d', (power, amounts) => {
    const got = inverseDistance(gauges, targets, { power })
    for (let k = 0; k < 3; k++) expect(got[k]).toBeCloseTo(amounts[k]!, 5)
    expect(inverseDistance(gauges, { xM: [10], yM: [0] }, { power })[0]).toBe(20)
  })

  it('Thiessen on the square [0, 10]²: weights 0.25, 0.375, 0.375, mean 21.25', () => {
    const weights = thiessenWeights(gauges, [0, 0, 10, 0, 10, 10, 0, 10])
    expect([...weights]).toEqual([0.25, 0.375, 0.375])
    expect(weights.reduce((sum, w, k) => sum + w * gauges.amountMm[k]!, 0)).toBe(21.25)
  })
})
