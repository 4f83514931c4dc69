import { describe, expect, it } from 'vitest'
import { dot, factorInPlace } from '../krige/cholesky.ts'
import { ordinaryKriging } from '../krige/ordinaryKriging.ts'
import { normalDeviates, seededRandom } from '../stats/seededRandom.ts'
import { empiricalVariogram } from './empirical.ts'
import { fitVariogram } from './fitVariogram.ts'
import { fitVariogramByLikelihood } from './fitVariogramByLikelihood.ts'
import { semivarianceMm2, shareOfSill, type Variogram, type VariogramKind } from './variogram.ts'

const kinds: VariogramKind[] = ['spherical', 'exponential', 'gaussian', 'matern32']

describe('variogram shapes', () => {
  it.each(kinds)('%s starts at the nugget just above 0 and reaches its range as promised', (kind) => {
    const variogram: Variogram = { kind, nuggetMm2: 3, partialSillMm2: 20, practicalRangeM: 5000 }
    expect(semivarianceMm2(variogram, 0, 0)).toBe(0)
    expect(semivarianceMm2(variogram, 1e-7, 0)).toBeCloseTo(3, 6)
    expect(shareOfSill(variogram, 3000, 4000)).toBeCloseTo(kind === 'spherical' ? 1 : 0.95, 9)
    expect(semivarianceMm2(variogram, 1e7, 0)).toBeCloseTo(23, 9)
  })

  it('across the major direction a lag counts 1 / ratio times as far', () => {
    const plain: Variogram = { kind: 'exponential', nuggetMm2: 0, partialSillMm2: 1, practicalRangeM: 9000 }
    const turned: Variogram = { ...plain, anisotropy: { majorBearingDeg: 90, ratio: 0.25 } }
    expect(shareOfSill(turned, 1000, 0)).toBeCloseTo(shareOfSill(plain, 1000, 0), 12)
    expect(shareOfSill(turned, 0, 1000)).toBeCloseTo(shareOfSill(plain, 4000, 0), 12)
    const northeast: Variogram = { ...plain, anisotropy: { majorBearingDeg: 45, ratio: 0.5 } }
    expect(shareOfSill(northeast, 700, 700)).toBeCloseTo(shareOfSill(plain, 700, 700), 12)
    expect(shareOfSill(northeast, 700, -700)).toBeCloseTo(shareOfSill(plain, 1400, 1400), 12)
  })
})

describe('empiricalVariogram', () => {
  const gauges = { xM: [0, 3, 0, 10], yM: [0, 4, 5, 0], amountMm: [1, 4, 9, Number.NaN] }
  it('halves the mean squared difference by distance, and skips missing amounts', () => {
    const got = empiricalVariogram(gauges, { classWidthM: 4, mostM: 20 })
    // Pairs: (0,1) 5 m, 9; (0,2) 5 m, 64; (1,2) √10 m, 25.
    expect([...got.pairs]).toEqual([1, 2])
    expect(got.lagM[0]).toBeCloseTo(Math.sqrt(10), 12)
    expect(got.lagM[1]).toBe(5)
    expect([...got.semivarianceMm2]).toEqual([12.5, 18.25])
  })

  it('looks in one direction when asked', () => {
    const got = empiricalVariogram(gauges, { classWidthM: 10, mostM: 20, bearingDeg: 0, toleranceDeg: 20 })
    expect([...got.pairs]).toEqual([1])
    expect([...got.semivarianceMm2]).toEqual([32])
  })
})

describe('fitting', () => {
  it('fitVariogram finds the variogram that made an exact table', () => {
    const truth: Variogram = { kind: 'spherical', nuggetMm2: 4, partialSillMm2: 31, practicalRangeM: 42_000 }
    const lagM = Float64Array.from({ length: 14 }, (_, k) => 4000 + 5000 * k)
    const empirical = {
      lagM,
      pairs: Float64Array.from(lagM, (_, k) => 30 + 7 * k),
      semivarianceMm2: Float64Array.from(lagM, (h) => semivarianceMm2(truth, h, 0)),
    }
    for (const weights of ['pairsByLag', 'pairsByModel'] as const) {
      const got = fitVariogram(empirical, { kind: 'spherical', weights })
      expect(got.nuggetMm2).toBeCloseTo(4, 3)
      expect(got.partialSillMm2).toBeCloseTo(31, 3)
      expect(got.practicalRangeM / 42_000).toBeCloseTo(1, 5)
    }
    expect(fitVariogram(empirical, { kind: 'spherical', noNugget: true }).nuggetMm2).toBe(0)
  })

  it('fitVariogram refuses a table of two distances', () => {
    const two = { pairs: [3, 4], lagM: [1, 2], semivarianceMm2: [1, 2] }
    const table = Object.fromEntries(Object.entries(two).map(([k, v]) => [k, Float64Array.from(v)])) as never
    expect(() => fitVariogram(table, { kind: 'gaussian' })).toThrow(/TOO_FEW_POINTS/)
  })

  it('likelihood finds range, nugget and direction of a simulated field of 300 gauges within its own uncertainty', () => {
    const random = seededRandom(40)
    const deviate = normalDeviates(random)
    const n = 300
    const xM = Float64Array.from({ length: n }, () => 100_000 * random())
    const yM = Float64Array.from({ length: n }, () => 100_000 * random())
    const truth: Variogram = {
      kind: 'exponential',
      nuggetMm2: 2,
      partialSillMm2: 18,
      practicalRangeM: 60_000,
      anisotropy: { majorBearingDeg: 30, ratio: 0.4 },
    }
    const factor = new Float64Array(n * n)
    for (let i = 0; i < n; i++)
      for (let j = 0; j <= i; j++) factor[i * n + j] = 20 - semivarianceMm2(truth, xM[i]! - xM[j]!, yM[i]! - yM[j]!)
    factorInPlace(factor, n, n)
    const z = Float64Array.from({ length: n }, deviate)
    const amountMm = Float64Array.from({ length: n }, (_, i) => {
      return 50 + dot(factor, i * n, z, 0, i) + z[i]! / factor[i * n + i]!
    })
    const { variogram, logLikelihood } = fitVariogramByLikelihood(
      { xM, yM, amountMm },
      { kind: 'exponential', anisotropic: true },
    )
    expect(variogram.nuggetMm2).toBeGreaterThan(0.5)
    expect(variogram.nuggetMm2).toBeLessThan(4)
    expect(variogram.practicalRangeM).toBeGreaterThan(35_000)
    expect(variogram.practicalRangeM).toBeLessThan(110_000)
    expect(Math.abs(variogram.anisotropy!.majorBearingDeg - 30)).toBeLessThan(12)
    expect(variogram.anisotropy!.ratio).toBeGreaterThan(0.25)
    expect(variogram.anisotropy!.ratio).toBeLessThan(0.6)
    const plain = fitVariogramByLikelihood({ xM, yM, amountMm }, { kind: 'exponential' })
    expect(logLikelihood).toBeGreaterThan(plain.logLikelihood + 3)
    expect(ordinaryKriging({ xM, yM, amountMm }, { xM: [1], yM: [2] }, variogram).varianceMm2[0]).toBeLessThan(20)
  })
})
