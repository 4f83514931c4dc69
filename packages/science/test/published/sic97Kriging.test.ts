import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { inverseDistance } from '../../src/krige/inverseDistance.ts'
import { ordinaryKriging, simpleKriging } from '../../src/krige/ordinaryKriging.ts'
import { empiricalVariogram } from '../../src/variogram/empirical.ts'
import { fitVariogram } from '../../src/variogram/fitVariogram.ts'
import type { Variogram, VariogramKind } from '../../src/variogram/variogram.ts'
import { readSic97 } from './sic97Fixture.ts'

// Source: gstat 2.1-0, re-derived by direct solution; see the fixture.
const goldens = JSON.parse(readFileSync(new URL('./fixtures/sic97Goldens.json', import.meta.url), 'utf8')) as {
  cases: {
    name: string
    variogram: { model: VariogramKind; nugget: number; psill: number; range_m: number }
    known_mean: number | null
    points: [number, number, number][]
  }[]
}
const { given, predict } = readSic97()
const gauges = { xM: given.xM, yM: given.yM, amountMm: given.rainTenthMm }

/** Range parameter to practical range: spherical a, exponential a ln 20, Gaussian a √(ln 20). */
const practicalPerParameter = {
  spherical: 1,
  exponential: Math.log(20),
  gaussian: Math.sqrt(Math.log(20)),
  matern32: 1,
}

const rmse = (got: Float64Array): number =>
  Math.sqrt(got.reduce((sum, value, k) => sum + (value - predict.rainTenthMm[k]!) ** 2, 0) / got.length)

describe('kriging of SIC97 against gstat', () => {
  it.each(goldens.cases.map((one) => [one.name, one] as const))('%s: 30 points to 1e-6 relative', (name, one) => {
    const { model, nugget, psill, range_m } = one.variogram
    const variogram: Variogram = {
      kind: model,
      nuggetMm2: nugget,
      partialSillMm2: psill,
      practicalRangeM: range_m * practicalPerParameter[model],
    }
    const ask = name.includes('12nearest') ? { nearest: 12 } : {}
    const got =
      one.known_mean === null
        ? ordinaryKriging(gauges, predict, variogram, ask)
        : simpleKriging(gauges, predict, variogram, one.known_mean, ask)
    expect(one.points).toHaveLength(30)
    for (const [id, prediction, variance] of one.points) {
      const k = predict.ids.indexOf(id)
      expect(Math.abs(got.amountMm[k]! / prediction - 1)).toBeLessThan(1e-6)
      expect(Math.abs(got.varianceMm2[k]! / variance - 1)).toBeLessThan(1e-6)
    }
  })

  it('fitting by weighted least squares, then ordinary kriging scores as gstat does: RMSE 55.25', () => {
    // Source: gstat 2.1-0, classes of 10 km to 150 km, weights pairs / lag²: sill 14632.69, range 79565 m.
    const empirical = empiricalVariogram(gauges, { classWidthM: 10_000, mostM: 150_000 })
    expect(empirical.pairs[0]).toBe(30)
    expect(empirical.semivarianceMm2[0]).toBeCloseTo(1253.16666666667, 6)
    expect(empirical.semivarianceMm2[14]).toBeCloseTo(10352.7813765182, 6)
    const variogram = fitVariogram(empirical, { kind: 'spherical' })
    expect(variogram.nuggetMm2).toBe(0)
    expect(variogram.partialSillMm2 / 14632.69).toBeCloseTo(1, 3)
    expect(variogram.practicalRangeM / 79565.04).toBeCloseTo(1, 3)
    expect(rmse(ordinaryKriging(gauges, predict, variogram).amountMm)).toBeCloseTo(55.25, 1)
  })

  it('inverse distance scores as computed independently: 59.83 with 12 nearest, 68.73 with all', () => {
    expect(rmse(inverseDistance(gauges, predict, { power: 2, nearest: 12 }))).toBeCloseTo(59.8333, 3)
    expect(rmse(inverseDistance(gauges, predict, { power: 2 }))).toBeCloseTo(68.7285, 3)
    expect(rmse(inverseDistance(gauges, predict, { power: 20, nearest: 1 }))).toBeCloseTo(84.1663, 3)
  })
})
