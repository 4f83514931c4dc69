import { describe, expect, it } from 'vitest'
import { fieldForDay } from '../../src/field/fieldForDay.ts'
import { fieldQuantiles } from '../../src/field/fieldQuantiles.ts'
import { crpsQuantiles } from '../../src/stats/crps.ts'
import { readSic97 } from './sic97Fixture.ts'

// Source: Spatial Interpolation Comparison 1997, Dubois (1998): 100 gauges given, 367 to predict. Nothing of the model
// was chosen on the 367: shapes compete by likelihood on the 100, priors are those of every day.
// For comparison (gstat 2.1-0): ordinary kriging RMSE 55.25, MAE 38.8, CRPS 29.6, 89.9 % within its 90 % interval.
const { given, predict } = readSic97()
const gauges = {
  ids: given.ids.map(String),
  xM: given.xM,
  yM: given.yM,
  elevationM: new Float64Array(given.ids.length).fill(Number.NaN),
}
const day = { amountMm: given.rainTenthMm.map((tenth) => tenth / 10), resolutionMm: 0.1 }
const targets = { xM: predict.xM, yM: predict.yM }
const field = fieldForDay(gauges, day, targets)
const seenMm = predict.rainTenthMm.map((tenth) => tenth / 10)

describe('the field of SIC97, everything fitted from the 100 given gauges', () => {
  it('misses the 367 by an RMSE of at most 53 tenths of a millimetre, without bias', () => {
    let squares = 0
    let sum = 0
    let absolute = 0
    for (let k = 0; k < 367; k++) {
      const off = 10 * (field.meanMm[k]! - seenMm[k]!)
      squares += off * off
      sum += off
      absolute += Math.abs(10 * (field.p50Mm[k]! - seenMm[k]!))
    }
    expect(Math.sqrt(squares / 367)).toBeLessThan(53)
    expect(Math.abs(sum / 367)).toBeLessThan(5)
    expect(absolute / 367).toBeLessThan(37.5)
  })

  it('is honest about its uncertainty: CRPS at most 28, 90 % interval holds 86 to 94 %', () => {
    const n = 99
    const levels = Array.from({ length: n }, (_, k) => (k + 0.5) / n)
    const quantiles = fieldQuantiles(field.params, gauges, day, targets, levels)
    const ends = fieldQuantiles(field.params, gauges, day, targets, [0.05, 0.95])
    let score = 0
    let inside = 0
    for (let k = 0; k < 367; k++) {
      score += 10 * crpsQuantiles(quantiles.subarray(k * n, (k + 1) * n), seenMm[k]!)
      if (seenMm[k]! >= ends[2 * k]! && seenMm[k]! <= ends[2 * k + 1]!) inside++
    }
    expect(score / 367).toBeLessThan(28)
    expect(inside / 367).toBeGreaterThan(0.86)
    expect(inside / 367).toBeLessThan(0.94)
  })

  it('finds the storm’s direction, north-east, as geostatisticians did by eye (from memory of the contest)', () => {
    expect(field.params.majorBearingDeg).toBeGreaterThan(25)
    expect(field.params.majorBearingDeg).toBeLessThan(60)
    expect(field.params.anisotropyRatio).toBeLessThan(0.6)
  })
})
