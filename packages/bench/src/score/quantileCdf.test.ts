import { describe, expect, it } from 'vitest'
import { forecastCell } from './quantileCdf.ts'

/** Ten quantiles at 0.05, 0.15 … 0.95: dry up to 0.3, then even from 0 to 7 mm. */
const forecast = {
  quantilesMm: Float64Array.of(99, 99, 0, 0, 0, 0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5),
  start: 2,
  levelCount: 10,
  dryChance: 0.3,
}

describe('forecastCell', () => {
  it('of a dry reading is the whole chance of dry', () => {
    expect(forecastCell(forecast, 0, 0.1)).toEqual({ low: 0, high: 0.3 })
  })

  it('of an amount reaches half a step to either side: 3 mm is at 0.3 + 3 / 10', () => {
    const { low, high } = forecastCell(forecast, 3, 0.4)
    expect(low).toBeCloseTo(0.58, 9)
    expect(high).toBeCloseTo(0.62, 9)
  })

  it('of the smallest amount begins where the dry days end', () => {
    expect(forecastCell(forecast, 0.1, 0.1).low).toBe(0.3)
  })

  it('of an amount beyond the last quantile takes all that is left', () => {
    expect(forecastCell(forecast, 80, 0.1)).toEqual({ low: 0.95, high: 1 })
  })

  it('of neighbouring amounts meet end to end', () => {
    for (let step = 1; step < 60; step++)
      expect(forecastCell(forecast, step * 0.1, 0.1).high).toBeCloseTo(
        forecastCell(forecast, (step + 1) * 0.1, 0.1).low,
        9,
      )
  })
})
