import type { GaugeSet } from '../network/gaugeSet.ts'
import { nearestGauges } from '../space/nearestGauges.ts'

export interface GaugePair {
  i: number
  j: number
  distanceM: number
}

/** Each gauge with about its `most` nearest others, every pair once (i < j). */
export function nearPairs(gauges: GaugeSet, most: number): GaugePair[] {
  const n = gauges.ids.length
  const pairs: GaugePair[] = []
  const lists = nearestGauges(gauges, Math.min(most, n - 1))
  for (let i = 0; i < n; i++) {
    for (const j of lists[i]!) {
      if (j < i && lists[j]!.includes(i)) continue
      const distanceM = Math.hypot(gauges.xM[i]! - gauges.xM[j]!, gauges.yM[i]! - gauges.yM[j]!)
      pairs.push(i < j ? { i, j, distanceM } : { i: j, j: i, distanceM })
    }
  }
  return pairs
}
