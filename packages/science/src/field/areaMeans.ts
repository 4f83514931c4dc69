/**
 * Mean rain over areas with its joint uncertainty: the field is simulated many times at points spread over the areas,
 * each time in keeping with every gauge and with how rain at one point goes with rain at another, and averaged. Rain's
 * small-scale part evens out within an area and is averaged at once. Source: conditional simulation, [Chiles2012] ch. 7.
 */

import { dot, factorInPlace, solveLowerInPlace } from '../krige/cholesky.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { type AreaRings, pointsInside } from '../space/rings.ts'
import { quantileOfSorted } from '../stats/quantile.ts'
import { normalDeviates, seededRandom } from '../stats/seededRandom.ts'
import { checkDay, type DayAmounts } from './fieldDay.ts'
import { type FieldParams, leastVariance, meanPriorVariance } from './fieldParams.ts'
import { type DaySites, findSites } from './findSites.ts'
import { meanAmountMm } from './rainOfScore.ts'
import { covariancesInto, warpFor, warpInto } from './warp.ts'

/** Per area, Float64Array(areas); NaN throughout where no gauge of the day has a reading. */
export interface AreaMeans {
  meanMm: Float64Array
  sdMm: Float64Array
  p10Mm: Float64Array
  p50Mm: Float64Array
  p90Mm: Float64Array
  /** Simulated means, draw d of area a at d * areas + a: for sums and differences of areas. */
  drawsMm: Float64Array
  draws: number
}

export interface AreaMeansAsk {
  /** Even number of simulations; 400 when not given. */
  draws?: number
  seed?: number
  /** What is usual at a place (factor), as for the gauges; 1 when not given. */
  usualAt?: (xM: number, yM: number) => number
}

/** Points simulated together at most, and gauges heard for them. */
const mostPoints = 420
const mostPerArea = 40
const fewestPerArea = 8
const mostGauges = 500
const neighbours = 24

/**
 * @param areas  each as rings on the gauges' plane (ringsFromGeoJson with the plane's projection)
 * @throws {ScienceError} SHAPES_DIFFER
 * @remarks Areas are simulated jointly as long as 8 points each fit in 420; beyond that in groups, in the order given,
 *   so that draws of areas in different groups are independent. Time about 0.1 s for 12 areas and 180 gauges.
 */
export function areaMeans(
  params: FieldParams,
  gauges: GaugeSet,
  day: DayAmounts,
  areas: readonly AreaRings[],
  ask: AreaMeansAsk = {},
): AreaMeans {
  checkDay(gauges, day)
  const draws = 2 * Math.max(1, Math.ceil((ask.draws ?? 400) / 2))
  const n = areas.length
  const out: AreaMeans = {
    meanMm: new Float64Array(n).fill(Number.NaN),
    sdMm: new Float64Array(n).fill(Number.NaN),
    p10Mm: new Float64Array(n).fill(Number.NaN),
    p50Mm: new Float64Array(n).fill(Number.NaN),
    p90Mm: new Float64Array(n).fill(Number.NaN),
    drawsMm: new Float64Array(n * draws).fill(Number.NaN),
    draws,
  }
  const sites = findSites(gauges, day, params)
  if (sites.count === 0 || n === 0) return out
  const deviate = normalDeviates(seededRandom(ask.seed ?? 1))
  const rain = rainTable(params)
  const perGroup = Math.floor(mostPoints / fewestPerArea)
  for (let first = 0; first < n; first += perGroup) {
    const group = areas.slice(first, first + perGroup)
    const perArea = Math.min(mostPerArea, Math.floor(mostPoints / group.length / 1.35))
    const points = group.map((rings) => pointsInside(rings, Math.max(fewestPerArea, perArea)))
    simulateGroup(params, sites, points, first, out, deviate, rain, ask.usualAt)
  }
  for (let a = 0; a < n; a++) summarise(out, n, a)
  return out
}

function simulateGroup(
  params: FieldParams,
  sites: DaySites,
  points: Float64Array[],
  first: number,
  out: AreaMeans,
  deviate: () => number,
  rain: (score: number) => number,
  usualAt: AreaMeansAsk['usualAt'],
): void {
  const m = points.reduce((sum, list) => sum + list.length / 2, 0)
  const xM = new Float64Array(m)
  const yM = new Float64Array(m)
  const owner = new Int32Array(m)
  const weight = new Float64Array(m)
  let filled = 0
  points.forEach((list, a) => {
    for (let k = 0; k < list.length; k += 2) {
      xM[filled] = list[k]!
      yM[filled] = list[k + 1]!
      owner[filled] = first + a
      weight[filled] = (usualAt?.(list[k]!, list[k + 1]!) ?? 1) / (list.length / 2)
      filled++
    }
  })
  const { mean, factor } = jointBelief(params, sites, xM, yM)
  const areas = out.meanMm.length
  const z = new Float64Array(m)
  for (let a = first; a < first + points.length; a++) for (let d = 0; d < out.draws; d++) out.drawsMm[d * areas + a] = 0
  for (let d = 0; d < out.draws; d += 2) {
    for (let i = 0; i < m; i++) z[i] = deviate()
    // Each set of deviates serves twice, mirrored: the mean settles faster.
    for (let i = 0; i < m; i++) {
      const off = dot(factor, i * m, z, 0, i) + z[i]! / factor[i * m + i]!
      out.drawsMm[d * areas + owner[i]!]! += weight[i]! * rain(mean[i]! + off)
      out.drawsMm[(d + 1) * areas + owner[i]!]! += weight[i]! * rain(mean[i]! - off)
    }
  }
}

/** Mean and Cholesky factor of the scores (without nugget) at points, given the day's sites. */
function jointBelief(
  params: FieldParams,
  sites: DaySites,
  xM: Float64Array,
  yM: Float64Array,
): { mean: Float64Array; factor: Float64Array } {
  const m = xM.length
  const p = new Float64Array(m)
  const q = new Float64Array(m)
  warpInto(warpFor(params), xM, yM, p, q)
  const heard = gaugesHeard(sites, p, q)
  const n = heard.length
  const shared = 1 - params.nuggetShare
  const gp = Float64Array.from(heard, (g) => sites.p[g]!)
  const gq = Float64Array.from(heard, (g) => sites.q[g]!)
  const among = new Float64Array(n * n)
  const centre = params.meanCentre / params.sd
  const values = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const g = heard[i]!
    covariancesInto(params.kind, shared, gp[i]!, gq[i]!, gp, gq, i, among, i * n)
    among[i * n + i] = 1 + meanPriorVariance + leastVariance + Math.min(1e6, sites.variance[g]!)
    values[i] = sites.mean[g]! - centre
  }
  factorInPlace(among, n, n)
  solveLowerInPlace(among, n, n, values)
  const mean = new Float64Array(m)
  const toGauges = new Float64Array(m * n)
  for (let t = 0; t < m; t++) {
    covariancesInto(params.kind, shared, p[t]!, q[t]!, gp, gq, n, toGauges, t * n)
    solveLowerInPlace(among, n, n, toGauges, t * n)
    mean[t] = centre + dot(toGauges, t * n, values, 0, n)
  }
  const doubt = 1 + 2 / (sites.count + 2)
  const factor = new Float64Array(m * m)
  for (let s = 0; s < m; s++) {
    covariancesInto(params.kind, shared, p[s]!, q[s]!, p, q, s + 1, factor, s * m)
    for (let t = 0; t <= s; t++)
      factor[s * m + t] = doubt * (factor[s * m + t]! - dot(toGauges, s * n, toGauges, t * n, n))
    factor[s * m + s]! += 1e-6
  }
  factorInPlace(factor, m, m)
  return { mean, factor }
}

/** All gauges where there are few; else those nearest to any of the points, spread over the points when too many. */
function gaugesHeard(sites: DaySites, p: Float64Array, q: Float64Array): Int32Array {
  if (sites.count <= mostGauges) return Int32Array.from({ length: sites.count }, (_, i) => i)
  const near = new Int32Array(neighbours)
  const taken = new Set<number>()
  for (let count = neighbours; count >= 1; count = Math.floor(count / 2)) {
    taken.clear()
    for (let t = 0; t < p.length; t++) {
      const found = sites.index.nearestInto(p[t]!, q[t]!, count, near)
      for (let k = 0; k < found; k++) taken.add(near[k]!)
    }
    if (taken.size <= mostGauges) break
  }
  return Int32Array.from(taken).sort()
}

/** Mean amount (mm) of a gauge where the score without nugget is known; linear between 800 knots. */
function rainTable(params: FieldParams): (score: number) => number {
  const nugget = Math.max(leastVariance, params.nuggetShare)
  const from = -6 * Math.sqrt(nugget)
  const to = 12 / Math.max(0.25, params.sd) + 12
  const knots = 800
  const table = Float64Array.from({ length: knots + 1 }, (_, k) =>
    meanAmountMm(params, from + ((to - from) * k) / knots, nugget, 0),
  )
  const perKnot = knots / (to - from)
  return (score) => {
    const position = (score - from) * perKnot
    if (!(position > 0)) return 0
    if (position >= knots) return meanAmountMm(params, score, nugget, 0)
    const k = position | 0
    return table[k]! + (position - k) * (table[k + 1]! - table[k]!)
  }
}

function summarise(out: AreaMeans, areas: number, a: number): void {
  const { draws } = out
  const values = Float64Array.from({ length: draws }, (_, d) => out.drawsMm[d * areas + a]!)
  const mean = values.reduce((sum, value) => sum + value, 0) / draws
  out.meanMm[a] = mean
  out.sdMm[a] = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (draws - 1))
  values.sort()
  out.p10Mm[a] = quantileOfSorted(values, 0.1)
  out.p50Mm[a] = quantileOfSorted(values, 0.5)
  out.p90Mm[a] = quantileOfSorted(values, 0.9)
}
