import { describe, expect, it } from 'vitest'
import type { Variogram } from '../variogram/variogram.ts'
import { factorInPlace, inverseOf, solveLowerInPlace, solveUpperInPlace } from './cholesky.ts'
import { inverseDistance } from './inverseDistance.ts'
import { leaveOneOut } from './leaveOneOut.ts'
import { ordinaryKriging, simpleKriging } from './ordinaryKriging.ts'

const gauges = {
  xM: Float64Array.of(0, 9, 2, 15, 7, 21),
  yM: Float64Array.of(1, 0, 8, 6, 13, 17),
  amountMm: Float64Array.of(3, 8, 1.5, 12, 6.25, 20),
}
const variogram: Variogram = { kind: 'exponential', nuggetMm2: 0.7, partialSillMm2: 30, practicalRangeM: 18 }

describe('Cholesky', () => {
  it('solves a system written out by hand, and gives its inverse', () => {
    // The solution is checked by multiplying it out again.
    const full = [4, 2, 0.4, 2, 5, 1, 0.4, 1, 3]
    const l = Float64Array.from(full)
    expect(factorInPlace(l, 3, 3)).toBe(-1)
    const x = Float64Array.of(10, 17, 12.4)
    solveLowerInPlace(l, 3, 3, x)
    solveUpperInPlace(l, 3, 3, x)
    for (let i = 0; i < 3; i++) {
      const product = full[3 * i]! * x[0]! + full[3 * i + 1]! * x[1]! + full[3 * i + 2]! * x[2]!
      expect(product).toBeCloseTo([10, 17, 12.4][i]!, 12)
    }
    const inverse = inverseOf(l, 3, 3)
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++) {
        let product = 0
        for (let k = 0; k < 3; k++) product += full[3 * i + k]! * inverse[3 * k + j]!
        expect(product).toBeCloseTo(i === j ? 1 : 0, 12)
      }
  })

  it('names the row at which a matrix is not positive definite', () => {
    expect(factorInPlace(Float64Array.of(4, 0, 2, 1), 2, 2)).toBe(1)
  })
})

describe('kriging', () => {
  it('leaveOneOut gives for each gauge what ordinary kriging without it gives', () => {
    const all = leaveOneOut(gauges, variogram)
    for (let i = 0; i < 6; i++) {
      const keep = [0, 1, 2, 3, 4, 5].filter((j) => j !== i)
      const others = {
        xM: keep.map((j) => gauges.xM[j]!),
        yM: keep.map((j) => gauges.yM[j]!),
        amountMm: keep.map((j) => gauges.amountMm[j]!),
      }
      const one = ordinaryKriging(others, { xM: [gauges.xM[i]!], yM: [gauges.yM[i]!] }, variogram)
      expect(all.amountMm[i]).toBeCloseTo(one.amountMm[0]!, 10)
      expect(all.varianceMm2[i]).toBeCloseTo(one.varianceMm2[0]!, 10)
    }
  })

  it('with every gauge among the nearest gives the same as with all', () => {
    const targets = { xM: [4, 30], yM: [5, 2] }
    const all = ordinaryKriging(gauges, targets, variogram)
    const near = ordinaryKriging(gauges, targets, variogram, { nearest: 6 })
    expect([...near.amountMm]).toEqual([...all.amountMm])
    const three = simpleKriging(gauges, targets, variogram, 7, { nearest: 3 })
    expect(three.amountMm[0]).not.toBeCloseTo(simpleKriging(gauges, targets, variogram, 7).amountMm[0]!, 6)
  })

  it('one gauge gives its own amount everywhere', () => {
    const got = ordinaryKriging({ xM: [2], yM: [3], amountMm: [4.5] }, { xM: [2, 50], yM: [3, 60] }, variogram)
    expect(got.amountMm[0]).toBeCloseTo(4.5, 12)
    expect(got.amountMm[1]).toBeCloseTo(4.5, 12)
    expect(got.varianceMm2[0]).toBeCloseTo(0, 12)
    expect(got.varianceMm2[1]).toBeGreaterThan(60)
  })

  it('names both gauges that stand at one place', () => {
    const twice = { xM: [1, 5, 1], yM: [2, 5, 2], amountMm: [1, 2, 3] }
    expect(() => ordinaryKriging(twice, { xM: [0], yM: [0] }, variogram)).toThrow(/SITES_COINCIDE.*0 and 2/)
  })

  it('refuses lists of unequal length, no gauges, and a mean that is no number', () => {
    const short = { xM: [1, 2], yM: [1], amountMm: [1, 2] }
    expect(() => ordinaryKriging(short, { xM: [0], yM: [0] }, variogram)).toThrow(/SHAPES_DIFFER/)
    expect(() => ordinaryKriging(gauges, { xM: [0], yM: [] }, variogram)).toThrow(/SHAPES_DIFFER/)
    const none = { xM: [], yM: [], amountMm: [] }
    expect(() => inverseDistance(none, { xM: [0], yM: [0] }, { power: 2 })).toThrow(/TOO_FEW_POINTS/)
    expect(() => simpleKriging(gauges, { xM: [0], yM: [0] }, variogram, Number.NaN)).toThrow(/OUT_OF_DOMAIN/)
  })
})
