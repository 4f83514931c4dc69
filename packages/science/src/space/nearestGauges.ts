import type { GaugeSet } from '../network/gaugeSet.ts'
import { NearestIndex } from './nearest.ts'

/** For each gauge its `count` nearest others, nearest first; ties go to the lower index. */
export function nearestGauges(gauges: GaugeSet, count: number): Int32Array[] {
  const n = gauges.ids.length
  const wanted = Math.max(0, Math.min(count, n - 1))
  const index = new NearestIndex(gauges.xM, gauges.yM)
  const found = new Int32Array(wanted + 1)
  return Array.from({ length: n }, (_, g) => {
    const held = index.nearestInto(gauges.xM[g]!, gauges.yM[g]!, wanted + 1, found)
    const others = new Int32Array(wanted)
    let k = 0
    for (let a = 0; a < held && k < wanted; a++) if (found[a] !== g) others[k++] = found[a]!
    return others
  })
}
