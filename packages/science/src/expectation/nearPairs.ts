import KDBush from 'kdbush'
import type { GaugeSet } from '../network/gaugeSet.ts'

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

/** For each gauge its `count` nearest others, nearest first. */
export function nearestGauges(gauges: GaugeSet, count: number): Int32Array[] {
  const n = gauges.ids.length
  if (count < 1) return Array.from({ length: n }, () => new Int32Array(0))
  const index = new KDBush(n)
  for (let g = 0; g < n; g++) index.add(gauges.xM[g]!, gauges.yM[g]!)
  index.finish()
  let west = Number.POSITIVE_INFINITY
  let east = Number.NEGATIVE_INFINITY
  let south = west
  let north = east
  for (let g = 0; g < n; g++) {
    west = Math.min(west, gauges.xM[g]!)
    east = Math.max(east, gauges.xM[g]!)
    south = Math.min(south, gauges.yM[g]!)
    north = Math.max(north, gauges.yM[g]!)
  }
  const widest = Math.hypot(east - west, north - south) + 1
  const usual = Math.sqrt(((east - west + 1) * (north - south + 1) * (count + 1)) / n)
  const lists: Int32Array[] = []
  for (let g = 0; g < n; g++) {
    let radius = usual
    let found = index.within(gauges.xM[g]!, gauges.yM[g]!, radius)
    while (found.length <= count && radius < widest) {
      radius *= 1.6
      found = index.within(gauges.xM[g]!, gauges.yM[g]!, radius)
    }
    const byDistance = found
      .filter((j) => j !== g)
      .map((j) => ({ j, squared: (gauges.xM[g]! - gauges.xM[j]!) ** 2 + (gauges.yM[g]! - gauges.yM[j]!) ** 2 }))
      .sort((a, b) => a.squared - b.squared || a.j - b.j)
    lists.push(Int32Array.from(byDistance.slice(0, count), (row) => row.j))
  }
  return lists
}
