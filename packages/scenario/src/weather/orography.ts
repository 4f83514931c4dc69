/**
 * How the ground changes the rain of a wide cloud at each site, by the direction the wind goes to: more where the air
 * has climbed on its way, less where it has come down, and more with height whatever the wind.
 */
import { type Grid, sampleGrid, smoothGrid } from '../terrain/grid.ts'
import type { Sites } from './sites.ts'

const DIRECTIONS = 24
const REACH_M = 48_000
const STEP_M = 1500
/** Distance over which the air forgets a climb: cloud needs 10-20 km to form, fall out and dry up. */
const MEMORY_M = 15_000
const CLIMB_FOR_DOUBLE_M = 620
const DESCENT_SHARE = 0.75
/** Share more per 1000 m of height, above 300 m. */
const HEIGHT_GAIN = 0.95

export interface Orography {
  /** Factor at a site for air moving toward `direction` (radians from east, counter-clockwise). About 0.4 to 2.6. */
  factor(site: number, direction: number): number
}

export function makeOrography(elevation: Grid, sites: Sites): Orography {
  const ground = smoothGrid(elevation, 5)
  const factors = new Float64Array(sites.count * DIRECTIONS)
  for (let site = 0; site < sites.count; site++) {
    const height = 1 + (HEIGHT_GAIN * (sites.elevationM[site]! - 300)) / 1000
    for (let sector = 0; sector < DIRECTIONS; sector++) {
      const direction = (2 * Math.PI * sector) / DIRECTIONS
      const climb = netClimb(ground, sites.xM[site]!, sites.yM[site]!, direction)
      const lift = Math.min(1.75, Math.max(0.5, 1 + climb / CLIMB_FOR_DOUBLE_M))
      factors[site * DIRECTIONS + sector] = Math.max(0.3, height * lift)
    }
  }
  return {
    factor: (site, direction) => {
      const turn = (((direction / (2 * Math.PI)) % 1) + 1) % 1
      const at = turn * DIRECTIONS
      const low = Math.floor(at) % DIRECTIONS
      const high = (low + 1) % DIRECTIONS
      const share = at - Math.floor(at)
      return factors[site * DIRECTIONS + low]! * (1 - share) + factors[site * DIRECTIONS + high]! * share
    },
  }
}

/** Climb less descent (m) along the air's way to the site, the nearest part counting most. */
function netClimb(ground: Grid, xM: number, yM: number, direction: number): number {
  const dx = Math.cos(direction)
  const dy = Math.sin(direction)
  let downwind = sampleGrid(ground, xM + dx * 4 * STEP_M, yM + dy * 4 * STEP_M)
  let net = 0
  for (let backM = -3 * STEP_M; backM <= REACH_M; backM += STEP_M) {
    const here = sampleGrid(ground, xM - dx * backM, yM - dy * backM)
    const rise = downwind - here
    net += (rise > 0 ? rise : DESCENT_SHARE * rise) * Math.exp(-Math.max(0, backM) / MEMORY_M)
    downwind = here
  }
  return net
}
