import { emptyDailyTable, seededRandom } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { expectationShape } from './expectationShape.ts'

/** Three gauges over 400 days, each day expected alike: dry with 0.3, else even from 0 to 10 mm. */
function evenlyExpected() {
  const levelCount = 50
  const clean = emptyDailyTable(3, 900, 400)
  const count = clean.amountMm.length
  const random = seededRandom(19)
  const quantilesMm = new Float32Array(count * levelCount)
  for (let i = 0; i < count; i++) {
    const share = random()
    const trueMm = share < 0.3 ? 0 : ((share - 0.3) / 0.7) * 10
    // Gauge 2 catches half of what falls, gauge 0 reports nothing.
    clean.amountMm[i] = i % 3 === 0 ? Number.NaN : Math.round((i % 3 === 2 ? trueMm / 2 : trueMm) * 10) / 10
    for (let k = 0; k < levelCount; k++)
      quantilesMm[i * levelCount + k] = Math.max(0, (((k + 0.5) / levelCount - 0.3) / 0.7) * 10)
  }
  const expectations = {
    gauge: Int32Array.from({ length: count }, (_, i) => i % 3),
    day: Int32Array.from({ length: count }, (_, i) => 900 + Math.floor(i / 3)),
    levelCount,
    quantilesMm,
    dryChance: new Float64Array(count).fill(0.3),
  }
  return expectationShape(expectations, clean, 0.1, seededRandom(23))
}

describe('expectationShape', () => {
  const shape = evenlyExpected()

  it('has, of a gauge that is as expected, a mean transform of a half, and a lower one of a gauge that catches half', () => {
    // Standard error of a mean of 400 uniforms: 0.0144.
    expect(Math.abs(shape.gauges[1]!.meanPit - 0.5)).toBeLessThan(3 * 0.0144)
    // 0.3 of the days 0.15 in the middle, 0.7 of them even from 0.3 to 0.65: 0.3 × 0.15 + 0.7 × 0.475 = 0.3775.
    expect(Math.abs(shape.gauges[2]!.meanPit - 0.3775)).toBeLessThan(3 * 0.0144)
  })

  it('does not know a gauge without readings', () => {
    expect(shape.gauges[0]).toEqual({ gauge: 0, count: 0, meanPit: Number.NaN })
  })

  it('counts every reading in the histograms and in the reliability of dry', () => {
    expect(shape.pitAll.count).toBe(800)
    expect(shape.dry.reduce((sum, bin) => sum + bin.count, 0)).toBe(800)
    const bin = shape.dry.find(({ count }) => count > 0)!
    expect(bin.meanSaid).toBeCloseTo(0.3, 9)
    expect(bin.low).toBeLessThan(0.3)
    expect(bin.high).toBeGreaterThan(0.3)
  })
})
