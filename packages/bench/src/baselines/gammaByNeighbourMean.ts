/**
 * Gamma test by intervals of the neighbours' mean: the days of a gauge are put into intervals by the mean of its ten
 * nearest gauges, each interval has its chance of dry and a gamma distribution of wet amounts, and a reading is suspect
 * when it lies far out in either tail. Source: [You2007] for the method; intervals (by factors of two from 0.05 mm) and the
 * sharing of scarce ones with the whole network are ours. Score = -log10 of the smaller tail.
 */
import type { DailyTable } from '@gaugewright/science'
import type { Baseline, BaselineAsk } from './baseline.ts'
import { gammaCdf, gammaUpper, thomShape } from './gammaDistribution.ts'
import { nearestGauges } from './nearestGauges.ts'

const neighbourCount = 10
const fewestNeighbours = 3
const intervalCount = 14
/** A gauge's own interval is used from this many days on; the network's counts as this many days before. */
const sharedDays = 30

export const gammaByNeighbourMean: Baseline = {
  name: 'gamma by neighbour mean',
  source: 'You et al. 2007',
  score({ gauges, table }) {
    const n = table.gaugeCount
    const meanMm = neighbourMeans({ gauges, table, history: null })
    const own = tally(table, meanMm, n)
    const scores = new Float64Array(table.amountMm.length).fill(Number.NaN)
    const network = own.slice(n * intervalCount)
    for (let cell = 0; cell < scores.length; cell++) {
      const amountMm = table.amountMm[cell]!
      const mean = meanMm[cell]!
      if (Number.isNaN(amountMm) || Number.isNaN(mean)) continue
      const interval = intervalOf(mean)
      scores[cell] = -Math.log10(
        Math.max(1e-300, smallerTail(own[(cell % n) * intervalCount + interval]!, network[interval]!, amountMm)),
      )
    }
    return scores
  },
}

interface Interval {
  days: number
  wetDays: number
  sumMm: number
  sumLog: number
}

/** 0 for a mean of nothing, then by factors of two from 0.05 mm up. */
function intervalOf(meanMm: number): number {
  if (meanMm <= 0) return 0
  return Math.min(intervalCount - 1, Math.max(1, 2 + Math.floor(Math.log2(meanMm / 0.05))))
}

/** Each gauge's intervals, then the network's. */
function tally(table: DailyTable, meanMm: Float64Array, n: number): Interval[] {
  const intervals = Array.from({ length: (n + 1) * intervalCount }, () => ({
    days: 0,
    wetDays: 0,
    sumMm: 0,
    sumLog: 0,
  }))
  for (let cell = 0; cell < table.amountMm.length; cell++) {
    const amountMm = table.amountMm[cell]!
    if (Number.isNaN(amountMm) || Number.isNaN(meanMm[cell]!)) continue
    for (const owner of [cell % n, n]) {
      const interval = intervals[owner * intervalCount + intervalOf(meanMm[cell]!)]!
      interval.days++
      if (amountMm <= 0) continue
      interval.wetDays++
      interval.sumMm += amountMm
      interval.sumLog += Math.log(amountMm)
    }
  }
  return intervals
}

function smallerTail(own: Interval, network: Interval, amountMm: number): number {
  const share = sharedDays / Math.max(1, network.days)
  const days = own.days + share * network.days
  const wetDays = own.wetDays + share * network.wetDays + 0.01
  const dryChance = 1 - wetDays / (days + 0.02)
  if (amountMm <= 0) return dryChance
  const sumMm = own.sumMm + share * network.sumMm + 0.01
  const meanMm = sumMm / wetDays
  const shape = thomShape(Math.log(meanMm) - (own.sumLog + share * network.sumLog) / wetDays)
  const x = (amountMm * shape) / meanMm
  return Math.min(dryChance + (1 - dryChance) * gammaCdf(shape, x), (1 - dryChance) * gammaUpper(shape, x))
}

/** Mean of the ten nearest gauges that reported; NaN with fewer than three. */
function neighbourMeans({ gauges, table }: BaselineAsk): Float64Array {
  const n = table.gaugeCount
  const { order } = nearestGauges(gauges)
  const meanMm = new Float64Array(table.amountMm.length).fill(Number.NaN)
  for (let row = 0; row < table.dayCount; row++) {
    for (let gauge = 0; gauge < n; gauge++) {
      let count = 0
      let sum = 0
      for (let r = 0; r < n - 1 && count < neighbourCount; r++) {
        const otherMm = table.amountMm[row * n + order[gauge * (n - 1) + r]!]!
        if (Number.isNaN(otherMm)) continue
        count++
        sum += otherMm
      }
      if (count >= fewestNeighbours) meanMm[row * n + gauge] = sum / count
    }
  }
  return meanMm
}
