import { emptyDailyTable } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { crpsFromQuantilesMm, quantileAtMm, scoreExpectations } from './scoreExpectations.ts'

/** Quantiles of the exponential distribution of the given mean. */
function exponentialQuantiles(meanMm: number, levelCount: number): Float64Array {
  return Float64Array.from({ length: levelCount }, (_, k) => -meanMm * Math.log(1 - (k + 0.5) / levelCount))
}

describe('crpsFromQuantilesMm', () => {
  it('of an exponential at y: y + 2 m exp(-y/m) - 3 m / 2 (closed form, by hand)', () => {
    const quantilesMm = exponentialQuantiles(4, 2000)
    for (const y of [0, 1.7, 9.3])
      expect(crpsFromQuantilesMm(quantilesMm, 0, 2000, y)).toBeCloseTo(y + 8 * Math.exp(-y / 4) - 6, 2)
  })

  it('of a sure value is the absolute error', () => {
    expect(crpsFromQuantilesMm(new Float64Array(200).fill(5), 0, 200, 7.5)).toBeCloseTo(2.5, 12)
    expect(crpsFromQuantilesMm(new Float64Array(200).fill(5), 0, 200, 1)).toBeCloseTo(4, 12)
  })
})

describe('quantileAtMm', () => {
  it('lies half way between the tenth and eleventh of 200 at 0.05', () => {
    const quantilesMm = Float64Array.from({ length: 200 }, (_, k) => k * k)
    expect(quantileAtMm(quantilesMm, 0, 200, 0.05)).toBeCloseTo((81 + 100) / 2, 9)
  })
})

describe('scoreExpectations', () => {
  it('leaves out days without a clean reading and counts tails only where the median is 1 mm or more', () => {
    const clean = emptyDailyTable(2, 50, 3)
    clean.amountMm.set([30, 0.1, Number.NaN, 4, 0, 6])
    const wide = exponentialQuantiles(5, 200)
    const thin = exponentialQuantiles(0.5, 200)
    const scores = scoreExpectations(
      {
        gauge: Int32Array.of(0, 1, 0, 1, 0, 1),
        day: Int32Array.of(50, 50, 51, 51, 52, 52),
        levelCount: 200,
        quantilesMm: Float64Array.from([wide, wide, wide, thin, thin, wide].flatMap((quantiles) => [...quantiles])),
      },
      clean,
    )
    expect(scores.count).toBe(5)
    expect(scores.interval).toEqual({ count: 3, inside: 1 / 3, below: 1 / 3, above: 1 / 3 })
    expect(scores.crpsEachMm[2]).toBeNaN()
  })
})
