import { describe, expect, it } from 'vitest'
import { changed, rainyNetwork, rowsOf } from '../../test/support/rainyNetwork.ts'
import { withReports } from '../../test/support/withReports.ts'
import { type Climate, monthOfEpochDay, wetGrid } from './climate.ts'
import { learnClimate } from './learnClimate.ts'

const n = 20
const { gauges, table } = rainyNetwork(23, n, 240)
const plain = learnClimate(gauges, table)
/** The month of the middle of the record. */
const month = monthOfEpochDay(table.firstDay + 120)

function scaleRatio(one: Climate, gauge: number, at = month): number {
  return one.scaleMm[gauge * 12 + at]! / plain.scaleMm[gauge * 12 + at]!
}

describe('learnClimate', () => {
  it('without any history gives every gauge the same broad climate', () => {
    const broad = learnClimate(gauges, rowsOf(table, 0, 0))
    expect(new Set(broad.dryShare).size).toBe(1)
    expect(new Set(broad.scaleMm).size).toBe(1)
    expect(broad.dryShare[0]).toBeGreaterThan(0.3)
    expect(broad.dryShare[0]).toBeLessThan(0.9)
    for (const score of broad.wetScore) expect(Number.isFinite(score)).toBe(true)
  })

  it('pooled wet amounts never fall along their grid, with history or without', () => {
    for (const climate of [plain, learnClimate(gauges, rowsOf(table, 0, 3)), learnClimate(gauges, rowsOf(table, 0, 0))])
      for (let i = 0; i < climate.wetScore.length; i++)
        if (i % wetGrid.count > 0) expect(climate.wetScore[i]!).toBeGreaterThan(climate.wetScore[i - 1]!)
  })

  it('finds how often the network is dry', () => {
    const dryDays = table.amountMm.reduce((sum, mm) => sum + (mm <= 0.05 ? 1 : 0), 0) / table.amountMm.length
    const learned = plain.dryShare.reduce((sum, share) => sum + share, 0) / plain.dryShare.length
    expect(Math.abs(learned - dryDays)).toBeLessThan(0.05)
  })

  it('moves the scale of a gauge that catches twice what it did part of the way in 240 days, and leaves the others nearly as they were', () => {
    const doubled = learnClimate(
      gauges,
      changed(table, (mm, g) => (g === 4 ? 2 * mm : mm)),
    )
    expect(scaleRatio(doubled, 4)).toBeGreaterThan(1.1)
    expect(scaleRatio(doubled, 4)).toBeLessThan(2.2)
    for (const g of [0, 9, 19]) expect(Math.abs(scaleRatio(doubled, g) - 1)).toBeLessThan(0.12)
  })

  it('believes a short record less than a long one', () => {
    const since = (rows: number) =>
      learnClimate(
        gauges,
        changed(table, (mm, g, day) => (g === 4 ? (day < table.firstDay + 240 - rows ? Number.NaN : 2 * mm) : mm)),
      )
    const ratios = [8, 60, 240].map((rows) => scaleRatio(since(rows), 4))
    expect(ratios[0]!).toBeLessThan(ratios[1]!)
    expect(ratios[1]!).toBeLessThan(ratios[2]!)
  })

  it('compares gauges on the days they have in common: one that reported only on the wettest days is not wetter', () => {
    const meanOf = (day: number) => {
      const start = (day - table.firstDay) * n
      return table.amountMm.subarray(start, start + n).reduce((sum, mm) => sum + mm, 0) / n
    }
    const fairWeather = learnClimate(
      gauges,
      changed(table, (mm, g, day) => (g === 4 && meanOf(day) < 4 ? Number.NaN : mm)),
    )
    expect(scaleRatio(fairWeather, 4)).toBeGreaterThan(0.7)
    expect(scaleRatio(fairWeather, 4)).toBeLessThan(1.4)
  })

  it('gives a gauge that reports more dry days than the others a larger chance of them, as far as 240 days can tell', () => {
    const idle = learnClimate(
      gauges,
      changed(table, (mm, g) => (g === 6 && mm < 3 ? 0 : mm)),
    )
    expect(idle.dryShare[6 * 12 + month]! - plain.dryShare[6 * 12 + month]!).toBeGreaterThan(0.015)
  })

  it('knows seasons: a month with three times the rain has larger wet amounts than the others', () => {
    const seasonal = learnClimate(
      gauges,
      changed(table, (mm, _, day) => (monthOfEpochDay(day) === month ? 3 * mm : mm)),
    )
    expect(scaleRatio(seasonal, 2)).toBeGreaterThan(1.25)
    expect(scaleRatio(seasonal, 2)).toBeGreaterThan(1.15 * scaleRatio(seasonal, 2, (month + 6) % 12))
  })

  it('does not take totals over several days for a day', () => {
    const days = [30, 70, 110].map((row) => table.firstDay + row)
    const missing = days.map((day) => ({ gauge: 3, day, amountMm: Number.NaN }))
    const totals = days.map((day) => ({ gauge: 3, day, amountMm: 200, spanDays: 3 }))
    expect(learnClimate(gauges, withReports(table, totals))).toEqual(learnClimate(gauges, withReports(table, missing)))
  })
})
