/** How a climate value changes with elevation, judged by gauges left out one by one; 0 where the network does not show it. */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { heightAbove, type Near } from './nearGauges.ts'

const enoughGauges = 10

/**
 * Least squares of what distance alone misses at each left-out gauge on its height above its neighbours, shrunk by the
 * variance ratio F of that fit: by 1 - 1 / F, to 0 where F is 1 or less. Source: positive-part shrinkage of [James1961].
 * @param value    one per gauge
 * @param between  gauges near a place, leaving one out
 * @returns per metre
 */
export function elevationSlope(
  gauges: GaugeSet,
  value: Float64Array,
  between: (xM: number, yM: number, leftOut: number) => Near,
): number {
  let count = 0
  let heightSquares = 0
  let missedSquares = 0
  let products = 0
  for (let g = 0; g < value.length; g++) {
    if (Number.isNaN(gauges.elevationM[g]!)) continue
    const near = between(gauges.xM[g]!, gauges.yM[g]!, g)
    if (near.count === 0) continue
    const above = heightAbove(gauges, near, gauges.elevationM[g]!)
    let missed = value[g]!
    for (let k = 0; k < near.count; k++) missed -= near.weight[k]! * value[near.gauge[k]!]!
    count++
    heightSquares += above * above
    missedSquares += missed * missed
    products += above * missed
  }
  if (count < enoughGauges || !(heightSquares > 0)) return 0
  const slope = products / heightSquares
  const residual = Math.max(0, missedSquares - slope * products) / (count - 1)
  if (residual === 0) return slope
  return slope * Math.max(0, 1 - residual / (slope * slope * heightSquares || residual))
}
