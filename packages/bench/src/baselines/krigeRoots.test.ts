import { emptyDailyTable, type GaugeSet } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { krigeRoots } from './krigeRoots.ts'
import type { RootVariogram } from './rootVariogram.ts'

/** Roots 10, 20 and 30 at (0,0), (10,0) and (0,10); the gauge asked about is at (3,3) and has not reported. */
function atThreeThree(variogram: RootVariogram) {
  const gauges: GaugeSet = {
    ids: ['A', 'B', 'C', 'asked'],
    xM: Float64Array.of(0, 10, 0, 3),
    yM: Float64Array.of(0, 0, 10, 3),
    elevationM: new Float64Array(4),
  }
  const table = emptyDailyTable(4, 0, 1)
  table.amountMm.set([100, 400, 900, Number.NaN])
  const { meanRoot, relativeVariance } = krigeRoots(gauges, table, variogram, 30)
  return { mean: meanRoot[3]!, variance: relativeVariance[3]! }
}

describe('krigeRoots', () => {
  it('is ordinary kriging: three gauges at (3,3), values worked out apart from this code', () => {
    const plain = atThreeThree({ kind: 'exponential', nugget: 0, partialSill: 1, lengthM: 10 })
    expect(plain.mean).toBeCloseTo(17.53216, 4)
    expect(plain.variance).toBeCloseTo(0.46814, 4)
    const rough = atThreeThree({ kind: 'exponential', nugget: 0.2, partialSill: 1, lengthM: 10 })
    expect(rough.mean).toBeCloseTo(18.15651, 4)
    expect(rough.variance).toBeCloseTo(0.74088, 4)
    const spherical = atThreeThree({ kind: 'spherical', nugget: 0, partialSill: 1, lengthM: 15 })
    expect(spherical.mean).toBeCloseTo(17.07229, 4)
    expect(spherical.variance).toBeCloseTo(0.55778, 4)
  })

  it('leaves out the gauge itself: its own amount changes nothing', () => {
    const gauges: GaugeSet = {
      ids: ['A', 'B', 'C', 'D'],
      xM: Float64Array.of(0, 10, 0, 3),
      yM: Float64Array.of(0, 0, 10, 3),
      elevationM: new Float64Array(4),
    }
    const variogram: RootVariogram = { kind: 'exponential', nugget: 0.1, partialSill: 1, lengthM: 10 }
    const estimates = [7, 250].map((ownMm) => {
      const table = emptyDailyTable(4, 0, 1)
      table.amountMm.set([100, 400, 900, ownMm])
      return krigeRoots(gauges, table, variogram, 30).meanRoot[3]
    })
    expect(estimates[0]).toBe(estimates[1])
    expect(estimates[0]).toBeGreaterThan(10)
  })
})
