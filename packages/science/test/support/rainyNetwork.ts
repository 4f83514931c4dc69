import { type DailyTable, emptyDailyTable } from '../../src/network/dailyTable.ts'
import type { GaugeSet } from '../../src/network/gaugeSet.ts'
import { normalDeviates, seededRandom } from '../../src/stats/seededRandom.ts'

export interface RainyNetwork {
  gauges: GaugeSet
  table: DailyTable
}

/** 2025-05-01. */
export const firstDay = 20_209

/**
 * Rain over a square of 90 km for tests: each day a mean and four broad bumps, above 0 where wet, read to 0.1 mm.
 * @returns gauges at uneven places with uneven heights, and everything they reported
 */
export function rainyNetwork(seed: number, gaugeCount: number, dayCount: number): RainyNetwork {
  const random = seededRandom(seed)
  const deviate = normalDeviates(random)
  const even = (low: number, high: number) =>
    Float64Array.from({ length: gaugeCount }, () => low + (high - low) * random())
  const gauges: GaugeSet = {
    ids: Array.from({ length: gaugeCount }, (_, g) => `G${g}`),
    xM: even(0, 90_000),
    yM: even(0, 90_000),
    elevationM: even(100, 1600),
  }
  const table = emptyDailyTable(gaugeCount, firstDay, dayCount)
  for (let d = 0; d < dayCount; d++) {
    const dayMean = -0.4 + 0.8 * deviate()
    const bumps = Array.from({ length: 4 }, () => [90_000 * random(), 90_000 * random(), 0.9 * deviate()] as const)
    for (let g = 0; g < gaugeCount; g++) {
      let level = dayMean + 0.15 * deviate()
      for (const [xM, yM, height] of bumps)
        level += height * Math.exp(-((gauges.xM[g]! - xM) ** 2 + (gauges.yM[g]! - yM) ** 2) / (2 * 30_000 ** 2))
      table.amountMm[d * gaugeCount + g] = level <= 0 ? 0 : Math.round(10 * 9 * level ** 1.8) / 10
      table.spanDays[d * gaugeCount + g] = 1
    }
  }
  return { gauges, table }
}

/** A copy with every amount of a gauge and day as `change` says; NaN takes the report away. */
export function changed(
  table: DailyTable,
  change: (amountMm: number, gauge: number, day: number) => number,
): DailyTable {
  const copy = emptyDailyTable(table.gaugeCount, table.firstDay, table.dayCount)
  for (let i = 0; i < table.amountMm.length; i++) {
    const amountMm = change(table.amountMm[i]!, i % table.gaugeCount, Math.floor(i / table.gaugeCount) + table.firstDay)
    copy.amountMm[i] = amountMm
    copy.spanDays[i] = Number.isNaN(amountMm) ? 0 : table.spanDays[i]!
  }
  return copy
}

/** The days `fromRow`…`toRow` - 1 alone. */
export function rowsOf(table: DailyTable, fromRow: number, toRow: number): DailyTable {
  const part = emptyDailyTable(table.gaugeCount, table.firstDay + fromRow, toRow - fromRow)
  const [from, to] = [fromRow * table.gaugeCount, toRow * table.gaugeCount]
  part.amountMm.set(table.amountMm.subarray(from, to))
  part.spanDays.set(table.spanDays.subarray(from, to))
  return part
}

/** Points on the plane; height unknown where none is given. */
export function pointsAt(...places: readonly (readonly [xM: number, yM: number, elevationM?: number])[]): GaugeSet {
  return {
    ids: places.map((_, p) => `P${p}`),
    xM: Float64Array.from(places, ([xM]) => xM),
    yM: Float64Array.from(places, ([, yM]) => yM),
    elevationM: Float64Array.from(places, ([, , elevationM]) => elevationM ?? Number.NaN),
  }
}
