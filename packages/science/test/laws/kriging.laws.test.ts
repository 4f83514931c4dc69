import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leaveOneOut } from '../../src/krige/leaveOneOut.ts'
import { ordinaryKriging } from '../../src/krige/ordinaryKriging.ts'
import { seededRandom } from '../../src/stats/seededRandom.ts'
import type { Variogram } from '../../src/variogram/variogram.ts'

const seed = fc.integer({ min: 1, max: 1_000_000 })
const options = { numRuns: 60, seed: 7 }

/** A network, targets and a variogram out of one number; all values differ. */
function world(from: number, nugget: boolean) {
  const random = seededRandom(from)
  const n = 4 + Math.floor(14 * random())
  const list = (count: number, size: number): Float64Array =>
    Float64Array.from({ length: count }, () => size * random())
  const variogram: Variogram = {
    kind: (['spherical', 'exponential', 'matern32'] as const)[from % 3]!,
    nuggetMm2: nugget ? 0.1 + 3 * random() : 0,
    partialSillMm2: 5 + 20 * random(),
    practicalRangeM: 20_000 + 90_000 * random(),
    anisotropy: { majorBearingDeg: 180 * random(), ratio: 0.3 + 0.7 * random() },
  }
  return {
    gauges: { xM: list(n, 100_000), yM: list(n, 80_000), amountMm: list(n, 40) },
    targets: { xM: list(5, 120_000), yM: list(5, 100_000) },
    variogram,
    random,
  }
}

const near = (got: ArrayLike<number>, wanted: ArrayLike<number>, tolerance = 1e-7): void => {
  expect(got.length).toBe(wanted.length)
  for (let k = 0; k < got.length; k++)
    expect(Math.abs(got[k]! - wanted[k]!)).toBeLessThan(tolerance * Math.max(1, Math.abs(wanted[k]!)))
}

describe('laws of ordinary kriging', () => {
  it('gives each gauge its own amount with no variance, whatever the nugget', () => {
    fc.assert(
      fc.property(seed, fc.boolean(), (from, nugget) => {
        const { gauges, variogram } = world(from, nugget)
        const got = ordinaryKriging(gauges, gauges, variogram)
        near(got.amountMm, gauges.amountMm)
        for (const variance of got.varianceMm2) expect(variance).toBeLessThan(1e-7)
      }),
      options,
    )
  })

  it('does not care where the map begins or how the gauges are numbered', () => {
    fc.assert(
      fc.property(seed, (from) => {
        const { gauges, targets, variogram, random } = world(from, true)
        const wanted = ordinaryKriging(gauges, targets, variogram)
        const order = Array.from(gauges.xM.keys()).sort(() => random() - 0.5)
        const moved = {
          xM: order.map((i) => gauges.xM[i]! + 512_000),
          yM: order.map((i) => gauges.yM[i]! - 77_000),
          amountMm: order.map((i) => gauges.amountMm[i]!),
        }
        const got = ordinaryKriging(
          moved,
          { xM: targets.xM.map((x) => x + 512_000), yM: targets.yM.map((y) => y - 77_000) },
          variogram,
        )
        near(got.amountMm, wanted.amountMm)
        near(got.varianceMm2, wanted.varianceMm2)
      }),
      options,
    )
  })

  it('rain × 2 with semivariance × 4 gives estimates × 2 and variance × 4; rain + 3 gives estimates + 3', () => {
    fc.assert(
      fc.property(seed, (from) => {
        const { gauges, targets, variogram } = world(from, true)
        const wanted = ordinaryKriging(gauges, targets, variogram)
        const twice = ordinaryKriging({ ...gauges, amountMm: gauges.amountMm.map((a) => 2 * a + 3) }, targets, {
          ...variogram,
          nuggetMm2: 4 * variogram.nuggetMm2,
          partialSillMm2: 4 * variogram.partialSillMm2,
        })
        near(
          twice.amountMm,
          wanted.amountMm.map((a) => 2 * a + 3),
        )
        near(
          twice.varianceMm2,
          wanted.varianceMm2.map((v) => 4 * v),
        )
      }),
      options,
    )
  })

  it('variance is never below 0, and a further gauge never makes it larger', () => {
    fc.assert(
      fc.property(seed, (from) => {
        const { gauges, targets, variogram } = world(from, false)
        const fewer = {
          xM: gauges.xM.subarray(1),
          yM: gauges.yM.subarray(1),
          amountMm: gauges.amountMm.subarray(1),
        }
        const all = ordinaryKriging(gauges, targets, variogram).varianceMm2
        const without = ordinaryKriging(fewer, targets, variogram).varianceMm2
        for (let t = 0; t < all.length; t++) {
          expect(all[t]).toBeGreaterThanOrEqual(0)
          expect(all[t]).toBeLessThanOrEqual(without[t]! * (1 + 1e-9) + 1e-9)
        }
        for (const variance of leaveOneOut(gauges, variogram).varianceMm2) expect(variance).toBeGreaterThan(0)
      }),
      options,
    )
  })
})
