/**
 * The climate of places without a gauge: scale and chance of a dry day from the nearest gauges by distance, and from
 * elevation as far as the network itself shows that it tells. Left out one by one, the gauges' own log scales and logits
 * of the dry share came back with an error 8 and 5 % smaller for elevation in an alpine network, 1 % in a flat one;
 * eight gauges and weights 1 / distance were within 3 % of simple kriging.
 */
import type { GaugeSet } from '../network/gaugeSet.ts'
import type { Climate } from './climate.ts'
import { elevationSlope } from './elevationSlope.ts'
import { heightAbove, type Near, nearnessOf } from './nearGauges.ts'
import { noRounding } from './rounding.ts'

/**
 * @param climate  of n gauges; n may be 0 only if there are no points
 * @returns the climate of the points: the months' pooled wet amounts of the network, the commonest resolution
 */
export function climateAtPoints(gauges: GaugeSet, climate: Climate, points: GaugeSet): Climate {
  const count = points.ids.length
  const out: Climate = {
    gaugeCount: count,
    resolutionMm: new Float64Array(count).fill(commonest(climate.resolutionMm)),
    rounding: noRounding(climate.rounding, count),
    dryShare: new Float64Array(count * 12),
    scaleMm: new Float64Array(count * 12),
    wetScore: climate.wetScore,
  }
  const logScale = climate.scaleMm.map(Math.log)
  const logit = climate.dryShare.map((share) => Math.log(share / (1 - share)))
  const between = nearnessOf(gauges)
  const scaleSlope = elevationSlope(gauges, yearMeans(logScale), between)
  const logitSlope = elevationSlope(gauges, yearMeans(logit), between)
  const range = elevationRange(gauges)
  for (let p = 0; p < count; p++) {
    const near = between(points.xM[p]!, points.yM[p]!, -1)
    const above = heightAbove(gauges, near, Math.min(range.high, Math.max(range.low, points.elevationM[p]!)))
    for (let m = 0; m < 12; m++) {
      const odds = Math.exp(weighted(near, logit, m) + logitSlope * above)
      out.scaleMm[p * 12 + m] = Math.exp(weighted(near, logScale, m) + scaleSlope * above)
      out.dryShare[p * 12 + m] = odds / (1 + odds)
    }
  }
  return out
}

function weighted(near: Near, value: Float64Array, month: number): number {
  let sum = 0
  for (let k = 0; k < near.count; k++) sum += near.weight[k]! * value[near.gauge[k]! * 12 + month]!
  return sum
}

function yearMeans(byMonth: Float64Array): Float64Array {
  const out = new Float64Array(byMonth.length / 12)
  for (let i = 0; i < byMonth.length; i++) out[Math.floor(i / 12)]! += byMonth[i]! / 12
  return out
}

/** Beyond the network's own heights nothing is known: points there count as at its highest or lowest gauge. */
function elevationRange(gauges: GaugeSet): { low: number; high: number } {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const elevationM of gauges.elevationM) {
    if (elevationM < low) low = elevationM
    if (elevationM > high) high = elevationM
  }
  return { low, high }
}

/** The value that occurs most; of several the smallest. */
function commonest(values: Float64Array): number {
  const counts = new Map<number, number>()
  for (const value of values.slice().sort()) counts.set(value, (counts.get(value) ?? 0) + 1)
  let best = 0.1
  let most = 0
  for (const [value, count] of counts) {
    if (count > most) {
      best = value
      most = count
    }
  }
  return best
}
