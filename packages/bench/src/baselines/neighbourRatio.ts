/**
 * The two plainest tests against the ten nearest gauges of the day. Ratio: |log((x + 1) / (median + 1))| in mm, common
 * practice. Q: the gap between the reading and the nearest neighbour amount over the range of all, as in Dixon's test;
 * named as a comparison in [You2007]. Where all are equal the gap is 0 and so is Q.
 */
import type { Baseline, BaselineAsk } from './baseline.ts'
import { nearestGauges } from './nearestGauges.ts'

const neighbourCount = 10
const fewest = 3

export const neighbourRatio: Baseline = {
  name: 'neighbour ratio',
  source: 'common practice',
  score: (ask) =>
    eachWithNeighbours(ask, (amountMm, sorted, count) => {
      const middle = count >> 1
      const medianMm = count % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
      return Math.abs(Math.log((amountMm + 1) / (medianMm + 1)))
    }),
}

export const neighbourQ: Baseline = {
  name: 'neighbour Q',
  source: 'Dixon; in You et al. 2007',
  score: (ask) =>
    eachWithNeighbours(ask, (amountMm, sorted, count) => {
      const lowest = sorted[0]!
      const highest = sorted[count - 1]!
      if (amountMm >= lowest && amountMm <= highest) return 0
      const gapMm = amountMm < lowest ? lowest - amountMm : amountMm - highest
      // Q alone is 1 for any amount among dry neighbours: the gap in mm orders what Q leaves tied.
      return gapMm / (Math.max(highest, amountMm) - Math.min(lowest, amountMm)) + gapMm / 1000
    }),
}

function eachWithNeighbours(
  { gauges, table }: BaselineAsk,
  score: (amountMm: number, sortedMm: Float64Array, count: number) => number,
): Float64Array {
  const n = table.gaugeCount
  const { order } = nearestGauges(gauges)
  const scores = new Float64Array(table.amountMm.length).fill(Number.NaN)
  const sorted = new Float64Array(neighbourCount)
  for (let row = 0; row < table.dayCount; row++) {
    for (let gauge = 0; gauge < n; gauge++) {
      const amountMm = table.amountMm[row * n + gauge]!
      if (Number.isNaN(amountMm)) continue
      let count = 0
      for (let r = 0; r < n - 1 && count < neighbourCount; r++) {
        const otherMm = table.amountMm[row * n + order[gauge * (n - 1) + r]!]!
        if (Number.isNaN(otherMm)) continue
        let place = count++
        for (; place > 0 && sorted[place - 1]! > otherMm; place--) sorted[place] = sorted[place - 1]!
        sorted[place] = otherMm
      }
      if (count >= fewest) scores[row * n + gauge] = score(amountMm, sorted, count)
    }
  }
  return scores
}
