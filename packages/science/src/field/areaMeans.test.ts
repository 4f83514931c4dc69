import { describe, expect, it } from 'vitest'
import { placed } from '../../test/support/placed.ts'
import { pointsInside } from '../space/rings.ts'
import { seededRandom } from '../stats/seededRandom.ts'
import { areaMeans } from './areaMeans.ts'
import type { FieldParams } from './fieldParams.ts'
import { fieldWith } from './fieldWith.ts'

const params: FieldParams = {
  kind: 'spherical',
  practicalRangeM: 90_000,
  majorBearingDeg: 0,
  anisotropyRatio: 1,
  nuggetShare: 0.15,
  power: 0.5,
  unitMm: 8,
  sd: 0.5,
  meanCentre: 0.9,
}
const random = seededRandom(21)
const n = 40
const gauges = placed(
  Array.from({ length: n }, () => 100_000 * random()),
  Array.from({ length: n }, () => 100_000 * random()),
)
const day = { amountMm: Float64Array.from({ length: n }, (_, g) => 3 + gauges.xM[g]! / 8000 + 4 * random()) }
const square = (x: number, y: number, side: number): Float64Array[] => [
  Float64Array.of(x, y, x + side, y, x + side, y + side, x, y + side, x, y),
]
const areas = [square(10_000, 10_000, 40_000), square(60_000, 55_000, 30_000), square(300_000, 0, 40_000)]

describe('areaMeans', () => {
  const got = areaMeans(params, gauges, day, areas)

  it('agrees with the mean of the field over the area', () => {
    areas.forEach((rings, a) => {
      const points = pointsInside(rings, 300)
      const at = {
        xM: Float64Array.from({ length: points.length / 2 }, (_, k) => points[2 * k]!),
        yM: Float64Array.from({ length: points.length / 2 }, (_, k) => points[2 * k + 1]!),
      }
      const mean = fieldWith(params, gauges, day, at).meanMm.reduce((sum, value) => sum + value / at.xM.length, 0)
      expect(Math.abs(got.meanMm[a]! / mean - 1)).toBeLessThan(0.04)
    })
  })

  it('is surer of a gauged area than of one far off, and its quantiles are in order', () => {
    expect(got.sdMm[2]).toBeGreaterThan(5 * got.sdMm[0]!)
    for (let a = 0; a < 3; a++) {
      expect(got.p10Mm[a]).toBeLessThan(got.p50Mm[a]!)
      expect(got.p50Mm[a]).toBeLessThan(got.p90Mm[a]!)
    }
  })

  it('the uncertainty of a mean is less than that of a point, but no less than correlation allows', () => {
    // Far from any gauge: sd of the mean over 40 km of a field with a 90 km range, simulated independently of n: between
    // the sd of a point and that of 40 independent points.
    const far = fieldWith(params, gauges, day, { xM: Float64Array.of(320_000), yM: Float64Array.of(20_000) })
    const pointSpread = far.p90Mm[0]! - far.p10Mm[0]!
    const meanSpread = got.p90Mm[2]! - got.p10Mm[2]!
    expect(meanSpread).toBeLessThan(pointSpread)
    expect(meanSpread).toBeGreaterThan(0.6 * pointSpread)
  })

  it('areas side by side go together, area by area in the draws', () => {
    const pair = areaMeans(params, gauges, day, [square(300_000, 0, 20_000), square(320_000, 0, 20_000)])
    let cross = 0
    for (let d = 0; d < pair.draws; d++)
      cross += (pair.drawsMm[2 * d]! - pair.meanMm[0]!) * (pair.drawsMm[2 * d + 1]! - pair.meanMm[1]!)
    expect(cross / (pair.draws - 1) / (pair.sdMm[0]! * pair.sdMm[1]!)).toBeGreaterThan(0.8)
  })

  it('gives the same twice, and NaN on a day without readings', () => {
    expect([...areaMeans(params, gauges, day, areas).p90Mm]).toEqual([...got.p90Mm])
    const none = areaMeans(params, gauges, { amountMm: new Float64Array(n).fill(Number.NaN) }, areas)
    expect(none.meanMm[0]).toBeNaN()
  })

  it('many areas at once are done in groups, none left out', () => {
    const many = Array.from({ length: 70 }, (_, k) => square(12_000 * (k % 8), 11_000 * Math.floor(k / 8), 9000))
    const result = areaMeans(params, gauges, day, many, { draws: 60 })
    expect(result.meanMm.every((value) => value > 0 && value < 60)).toBe(true)
  })
})
