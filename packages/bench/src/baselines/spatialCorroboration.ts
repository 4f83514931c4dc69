/**
 * Spatial corroboration: how far an amount lies outside everything that 3 to 7 neighbours within 75 km reported on the
 * day, the day before and the day after, against a limit that shrinks as the climatological ranks differ.
 * Source: [Durre2010]; limit in mm = 269.24 - 45.72 ln(difference of percentile ranks). Score = distance / limit.
 */
import type { Baseline } from './baseline.ts'
import { climateRanks } from './climateRanks.ts'
import { nearestGauges } from './nearestGauges.ts'

const reachM = 75_000
const fewest = 3
const most = 7

export function corroborationLimitMm(rankDifference: number): number {
  return rankDifference > 0 ? 269.24 - 45.72 * Math.log(rankDifference) : 269.24
}

export const spatialCorroboration: Baseline = {
  name: 'spatial corroboration',
  source: 'Durre et al. 2010',
  score({ gauges, table, history }) {
    const n = table.gaugeCount
    const { order, distanceM } = nearestGauges(gauges)
    const ranks = climateRanks(table, history)
    const scores = new Float64Array(table.amountMm.length).fill(Number.NaN)
    for (let row = 0; row < table.dayCount; row++) {
      const firstRow = Math.max(0, row - 1)
      const lastRow = Math.min(table.dayCount - 1, row + 1)
      for (let gauge = 0; gauge < n; gauge++) {
        const cell = row * n + gauge
        const amountMm = table.amountMm[cell]!
        if (Number.isNaN(amountMm)) continue
        let neighbours = 0
        let lowest = Number.POSITIVE_INFINITY
        let highest = Number.NEGATIVE_INFINITY
        let rankDifference = Number.POSITIVE_INFINITY
        for (let r = 0; r < n - 1 && neighbours < most; r++) {
          const place = gauge * (n - 1) + r
          if (distanceM[place]! > reachM) break
          const other = order[place]!
          if (Number.isNaN(table.amountMm[row * n + other]!)) continue
          neighbours++
          for (let near = firstRow; near <= lastRow; near++) {
            const otherMm = table.amountMm[near * n + other]!
            if (Number.isNaN(otherMm)) continue
            lowest = Math.min(lowest, otherMm)
            highest = Math.max(highest, otherMm)
            const difference = Math.abs(ranks[cell]! - ranks[near * n + other]!)
            if (difference < rankDifference) rankDifference = difference
          }
        }
        if (neighbours < fewest) continue
        const outsideMm = Math.max(0, lowest - amountMm, amountMm - highest)
        const known = Number.isFinite(rankDifference) ? rankDifference : 0
        scores[cell] = outsideMm / corroborationLimitMm(known)
      }
    }
    return scores
  },
}
