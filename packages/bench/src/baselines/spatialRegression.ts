/**
 * Spatial regression test: a straight line from each neighbour to the gauge, fitted over the 60 days around, gives an
 * estimate with a standard error; the estimates are joined with weights 1 / s² and the reading is compared with the
 * joint one in units of the joint error. Source: [Hubbard2005], [You2008], as in references of the project (joint
 * error 1/s'² = mean of 1/s²). Score = |x - x'| / (s' + 0.1 mm): the 0.1 keeps dry spells from dividing by nothing.
 */
import type { DailyTable } from '@gaugewright/science'
import type { Baseline } from './baseline.ts'
import { nearestGauges } from './nearestGauges.ts'

const neighbourCount = 10
const halfWindowDays = 30
const fewestPairs = 20
const smallestErrorMm = 0.1

export const spatialRegression: Baseline = {
  name: 'spatial regression',
  source: 'Hubbard et al. 2005; You et al. 2008',
  score({ gauges, table }) {
    const n = table.gaugeCount
    const { order } = nearestGauges(gauges)
    const scores = new Float64Array(table.amountMm.length).fill(Number.NaN)
    const weightSum = new Float64Array(table.dayCount)
    const weighted = new Float64Array(table.dayCount)
    const used = new Uint8Array(table.dayCount)
    for (let gauge = 0; gauge < n; gauge++) {
      weightSum.fill(0)
      weighted.fill(0)
      used.fill(0)
      for (let r = 0; r < Math.min(n - 1, 3 * neighbourCount); r++)
        addNeighbour(table, gauge, order[gauge * (n - 1) + r]!, weightSum, weighted, used)
      for (let row = 0; row < table.dayCount; row++) {
        const amountMm = table.amountMm[row * n + gauge]!
        if (Number.isNaN(amountMm) || used[row]! < 3) continue
        const estimateMm = weighted[row]! / weightSum[row]!
        const errorMm = Math.sqrt(used[row]! / weightSum[row]!)
        scores[row * n + gauge] = Math.abs(amountMm - estimateMm) / (errorMm + 0.1)
      }
    }
    return scores
  },
}

/** Adds the estimates from one neighbour to every day that has not yet ten; the day itself is left out of its fit. */
function addNeighbour(
  table: DailyTable,
  gauge: number,
  other: number,
  weightSum: Float64Array,
  weighted: Float64Array,
  used: Uint8Array,
): void {
  const n = table.gaugeCount
  let count = 0
  let sumX = 0
  let sumY = 0
  let sumXx = 0
  let sumXy = 0
  let sumYy = 0
  const move = (row: number, sign: 1 | -1): void => {
    if (row < 0 || row >= table.dayCount) return
    const x = table.amountMm[row * n + other]!
    const y = table.amountMm[row * n + gauge]!
    if (Number.isNaN(x) || Number.isNaN(y)) return
    count += sign
    sumX += sign * x
    sumY += sign * y
    sumXx += sign * x * x
    sumXy += sign * x * y
    sumYy += sign * y * y
  }
  for (let row = 0; row < halfWindowDays; row++) move(row, 1)
  for (let row = 0; row < table.dayCount; row++) {
    move(row + halfWindowDays, 1)
    move(row - halfWindowDays - 1, -1)
    const x = table.amountMm[row * n + other]!
    if (Number.isNaN(x) || used[row]! >= neighbourCount || count <= fewestPairs) continue
    move(row, -1)
    const spreadX = Math.max(0, sumXx - (sumX * sumX) / count)
    const spreadXy = sumXy - (sumX * sumY) / count
    const spreadY = Math.max(0, sumYy - (sumY * sumY) / count)
    const slope = spreadX > 1e-9 ? spreadXy / spreadX : 0
    const residual = Math.max(0, spreadY - slope * spreadXy)
    const errorMm = Math.max(smallestErrorMm, Math.sqrt(residual / Math.max(1, count - 2)))
    const estimateMm = sumY / count + slope * (x - sumX / count)
    weightSum[row] = weightSum[row]! + 1 / (errorMm * errorMm)
    weighted[row] = weighted[row]! + estimateMm / (errorMm * errorMm)
    used[row] = used[row]! + 1
    move(row, 1)
  }
}
