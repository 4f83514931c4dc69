/**
 * What each gauge says of its own score, by expectation propagation over the day: known amounts speak for themselves;
 * a cell (dry, trace, a small amount) is matched again and again against what its neighbours say until they agree.
 * Source: [Minka2001], with local neighbourhoods as in [Vecchia1988].
 */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { NearestIndex } from '../space/nearest.ts'
import type { DayAmounts } from './fieldDay.ts'
import { type FieldParams, leastVariance } from './fieldParams.ts'
import { LocalField, type Sites } from './localField.ts'
import { matchMoments, type Site } from './matchMoments.ts'
import { scoresOf } from './scores.ts'
import { spreadOrder } from './spreadOrder.ts'
import { warpFor, warpInto } from './warp.ts'

/** Sites of the gauges with a reading, and a look-up of the nearest on the stretched plane. */
export interface DaySites extends Sites {
  count: number
  index: NearestIndex
}

const neighbours = 24
const mostSweeps = 8

export function findSites(gauges: GaugeSet, day: DayAmounts, params: FieldParams): DaySites {
  const all: number[] = []
  for (let g = 0; g < day.amountMm.length; g++) if (!Number.isNaN(day.amountMm[g]!)) all.push(g)
  const used = Int32Array.from(all)
  const n = used.length
  const p = new Float64Array(n)
  const q = new Float64Array(n)
  const xM = Float64Array.from(used, (g) => gauges.xM[g]!)
  const yM = Float64Array.from(used, (g) => gauges.yM[g]!)
  warpInto(warpFor(params), xM, yM, p, q)
  const sites: DaySites = {
    p,
    q,
    mean: new Float64Array(n),
    variance: new Float64Array(n).fill(Number.POSITIVE_INFINITY),
    count: n,
    index: new NearestIndex(p, q),
  }
  const scores = scoresOf(day, used, params)
  const cells: number[] = []
  for (let i = 0; i < n; i++) {
    if (Number.isNaN(scores.variance[i]!)) cells.push(i)
    else {
      sites.mean[i] = scores.low[i]!
      sites.variance[i] = scores.variance[i]! + leastVariance
    }
  }
  if (cells.length === 0) return sites
  // Spread order, so that the first round does not run along one edge; the same whatever the numbering.
  const order = Int32Array.from(
    spreadOrder(
      Float64Array.from(cells, (i) => xM[i]!),
      Float64Array.from(cells, (i) => yM[i]!),
    ),
    (k) => cells[k]!,
  )
  const size = Math.min(n, neighbours + 1)
  const near = new Int32Array(order.length * size)
  for (let k = 0; k < order.length; k++)
    sites.index.nearestInto(p[order[k]!]!, q[order[k]!]!, size, near.subarray(k * size, (k + 1) * size))
  const local = new LocalField(sites, params, size)
  const found: Site = { mean: 0, variance: 0, logShare: 0 }
  for (let sweep = 0; sweep < mostSweeps; sweep++) {
    let moved = 0
    const share = sweep < 2 ? 1 : 0.7
    for (let k = 0; k < order.length; k++) {
      const i = order[k]!
      local.gather(near.subarray(k * size, (k + 1) * size), size, i)
      local.look(p[i]!, q[i]!)
      matchMoments(local.mean, local.variance, scores.low[i]!, scores.high[i]!, found)
      const before = 1 / sites.variance[i]!
      const precision = (1 - share) * before + share / found.variance
      const shift = (1 - share) * (before > 0 ? sites.mean[i]! * before : 0) + (share * found.mean) / found.variance
      // Change of what the gauge would say together with its surroundings, in their standard deviations.
      const total = precision + 1 / local.variance
      const change = (shift - (before > 0 ? sites.mean[i]! * before : 0) - (precision - before) * local.mean) / total
      moved = Math.max(moved, Math.abs(change) / Math.sqrt(local.variance))
      sites.variance[i] = 1 / precision
      sites.mean[i] = shift / precision
    }
    if (moved < 1e-3) break
  }
  return sites
}
