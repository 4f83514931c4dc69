import { describe, expect, it } from 'vitest'
import { neighbourSupport } from './neighbourSupport.ts'

describe('neighbourSupport', () => {
  it('is best amid near gauges that held the same, worse far away, worse among unlike ones, and missing where unread', () => {
    const xKm = [0, 2, 4, 6, 8, 60, 90, 92]
    const caughtMm = Float64Array.of(10, 10.4, 10.1, 9.7, 1, 10, 10, Number.NaN)
    const sites = {
      count: xKm.length,
      xM: Float64Array.from(xKm, (km) => km * 1000),
      yM: new Float64Array(xKm.length),
      elevationM: new Float64Array(xKm.length),
    }
    const support = neighbourSupport(sites, caughtMm)
    expect(support[1]).toBeGreaterThan(support[4]!)
    expect(support[2]).toBeGreaterThan(support[5]!)
    expect(support[5]).toBeGreaterThan(support[6]!)
    expect(support[7]).toBeNaN()
  })
})
