import { expect, it } from 'vitest'
import { ordinaryKriging } from '../../src/krige/ordinaryKriging.ts'

it('ordinaryKriging matches Isaaks & Srivastava 1989, ch. 12: 592.7, variance 8.96', () => {
  // ppm in the book; only numbers matter. The book's covariance is 10 exp(-0.3 h): practical range ln 20 / 0.3.
  const gauges = {
    xM: Float64Array.of(61, 63, 64, 68, 71, 73, 75),
    yM: Float64Array.of(139, 140, 129, 128, 140, 141, 128),
    amountMm: Float64Array.of(477, 696, 227, 646, 606, 791, 783),
  }
  const variogram = {
    kind: 'exponential',
    nuggetMm2: 0,
    partialSillMm2: 10,
    practicalRangeM: Math.log(20) / 0.3,
  } as const
  const got = ordinaryKriging(gauges, { xM: Float64Array.of(65), yM: Float64Array.of(137) }, variogram)
  expect(got.amountMm[0]).toBeCloseTo(592.73, 2) // recomputed independently: 592.73
  expect(got.varianceMm2[0]).toBeCloseTo(8.956, 3) // recomputed independently: 8.956
})
