import { describe, expect, it } from 'vitest'
import { syntheticNetwork } from './syntheticNetwork.ts'

describe('syntheticNetwork', () => {
  const ask = { gaugeCount: 300, dayCount: 40, firstDay: 20_000, seed: 7 }
  const { gauges, table } = syntheticNetwork(ask)

  it('is the same for the same seed and another for another', () => {
    expect(syntheticNetwork(ask).table.amountMm).toEqual(table.amountMm)
    expect(syntheticNetwork({ ...ask, seed: 8 }).table.amountMm).not.toEqual(table.amountMm)
  })

  it('has a gauge per 100 km², about 93 % reports, and rain on a fair share of them', () => {
    expect(Math.max(...gauges.xM)).toBeLessThanOrEqual(Math.sqrt(300 * 100e6))
    const reported = table.amountMm.filter((amountMm) => !Number.isNaN(amountMm))
    expect(reported.length / table.amountMm.length).toBeCloseTo(0.93, 1)
    const wetShare = reported.filter((amountMm) => amountMm > 0).length / reported.length
    expect(wetShare).toBeGreaterThan(0.15)
    expect(wetShare).toBeLessThan(0.85)
  })
})
