/** The neighbourhood of a network, worked out once for each learned correlation and kept while that is in use. */
import type { GaugeSet } from '../network/gaugeSet.ts'
import type { Correlation } from './correlation.ts'
import { buildNeighbourhood, type Neighbourhood } from './neighbourhood.ts'

interface Kept {
  gauges: GaugeSet
  hood: Neighbourhood
}

const kept = new WeakMap<Correlation, Kept>()

/** As buildNeighbourhood(); the answer is shared and not to be changed, nor is the correlation from here on. */
export function neighbourhoodOf(gauges: GaugeSet, correlation: Correlation, size: number): Neighbourhood {
  const before = kept.get(correlation)
  if (before !== undefined && before.gauges === gauges && before.hood.size === size) return before.hood
  const hood = buildNeighbourhood(gauges, correlation, size)
  kept.set(correlation, { gauges, hood })
  return hood
}
