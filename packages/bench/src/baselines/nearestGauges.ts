/** For every gauge all others, nearest first. */
import type { GaugeSet } from '@gaugewright/science'

export interface NearestGauges {
  /** Gauges from near to far: place r of gauge g at g * (n - 1) + r. */
  order: Int32Array
  /** Their distances in metres, in the same places. */
  distanceM: Float64Array
}

/** @remarks Time O(n² log n), memory O(n²): for the hundreds of gauges of a test network. */
export function nearestGauges(gauges: GaugeSet): NearestGauges {
  const n = gauges.xM.length
  const order = new Int32Array(n * (n - 1))
  const distanceM = new Float64Array(n * (n - 1))
  const toM = new Float64Array(n)
  for (let g = 0; g < n; g++) {
    for (let other = 0; other < n; other++)
      toM[other] = Math.hypot(gauges.xM[other]! - gauges.xM[g]!, gauges.yM[other]! - gauges.yM[g]!)
    const row = order.subarray(g * (n - 1), (g + 1) * (n - 1))
    let place = 0
    for (let other = 0; other < n; other++) if (other !== g) row[place++] = other
    row.sort((a, b) => toM[a]! - toM[b]! || a - b)
    for (let r = 0; r < n - 1; r++) distanceM[g * (n - 1) + r] = toM[row[r]!]!
  }
  return { order, distanceM }
}
