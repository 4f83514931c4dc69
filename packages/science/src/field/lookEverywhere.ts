/**
 * What the day's readings say of the score at many places: tiles of neighbouring targets share one factorisation of
 * the gauges around them.
 */
import type { FieldTargets } from './fieldDay.ts'
import type { FieldParams } from './fieldParams.ts'
import type { DaySites } from './findSites.ts'
import { LocalField } from './localField.ts'
import { warpFor, warpInto } from './warp.ts'
import { WholeMean } from './wholeMean.ts'

/**
 * With no more gauges than the first all speak everywhere; up to the second all speak for the mean, and the nearest for
 * the spread; beyond, the nearest speak for both.
 */
const allSpeakUpTo = 64
const meanByAllUpTo = 700
const nearestForSpread = 48
const nearestForBoth = 64
const targetsPerTile = 16

/**
 * Visit each target with the mean and variance of its score, tile by tile. The variance is widened by 1 + 2 / (n + 2):
 * with few gauges the parameters themselves are uncertain (as a t distribution is wider than the normal).
 */
export function lookEverywhere(
  params: FieldParams,
  sites: DaySites,
  targets: FieldTargets,
  see: (t: number, mean: number, variance: number) => void,
): void {
  const m = targets.xM.length
  const p = new Float64Array(m)
  const q = new Float64Array(m)
  warpInto(warpFor(params), targets.xM, targets.yM, p, q)
  const all = sites.count <= allSpeakUpTo
  const doubt = 1 + 2 / (sites.count + 2)
  const whole = !all && sites.count <= meanByAllUpTo ? new WholeMean(sites, params) : undefined
  const size = all ? sites.count : whole ? nearestForSpread : nearestForBoth
  const local = new LocalField(sites, params, size)
  const near = Int32Array.from({ length: size }, (_, k) => k)
  if (all) {
    local.gather(near, size)
    for (let t = 0; t < m; t++) {
      local.look(p[t]!, q[t]!)
      see(t, local.mean, local.variance * doubt)
    }
    return
  }
  for (const tile of tilesOf(p, q)) {
    let west = Number.POSITIVE_INFINITY
    let south = west
    let east = Number.NEGATIVE_INFINITY
    let north = east
    for (const t of tile) {
      west = Math.min(west, p[t]!)
      east = Math.max(east, p[t]!)
      south = Math.min(south, q[t]!)
      north = Math.max(north, q[t]!)
    }
    sites.index.nearestInto(0.5 * (west + east), 0.5 * (south + north), size, near)
    local.gather(near, size)
    for (const t of tile) {
      local.look(p[t]!, q[t]!)
      see(t, whole ? whole.at(p[t]!, q[t]!) : local.mean, local.variance * doubt)
    }
  }
}

/** Targets by squares of the stretched plane that hold about 16 each. */
function tilesOf(p: Float64Array, q: Float64Array): number[][] {
  const m = p.length
  let west = Number.POSITIVE_INFINITY
  let south = west
  let east = Number.NEGATIVE_INFINITY
  let north = east
  for (let t = 0; t < m; t++) {
    west = Math.min(west, p[t]!)
    east = Math.max(east, p[t]!)
    south = Math.min(south, q[t]!)
    north = Math.max(north, q[t]!)
  }
  const side = Math.sqrt(((east - west) * (north - south) * targetsPerTile) / Math.max(1, m)) || 1
  const columns = Math.floor((east - west) / side) + 1
  const tiles = new Map<number, number[]>()
  for (let t = 0; t < m; t++) {
    const key = Math.floor((q[t]! - south) / side) * columns + Math.floor((p[t]! - west) / side)
    const tile = tiles.get(key)
    if (tile) tile.push(t)
    else tiles.set(key, [t])
  }
  return [...tiles.values()]
}
