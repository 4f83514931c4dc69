/**
 * The skyline seen from a gauge's rim: how high the horizon stands at every bearing, and what each obstacle has to do with
 * it. Exact at every bearing that is asked about; nothing is interpolated. Angles in degrees, bearings clockwise from true
 * north. An obstacle that does not rise above the rim is none.
 */
import { raiseByRound, raiseByStraight, steepestOfRound, steepestOfStraight } from './edgeSeen.ts'
import { distanceToObstacleM, topEdges } from './topEdges.ts'
import type { Obstacle, YardPlan, YardPoint } from './yard.ts'

export interface ObstacleSeen {
  obstacleId: string
  /** Highest elevation angle above the rim; 0 where it does not rise above it. */
  elevationDeg: number
  /** Where that is: bearing, horizontal distance, height above the rim. */
  bearingDeg: number
  distanceM: number
  aboveRimM: number
  /** distance / height above the rim there; infinite where it does not rise above the rim. */
  ratio: number
  /** Horizontal distance to its nearest part, whatever its height there. */
  nearestM: number
}

export interface Skyline {
  at: YardPoint
  rimM: number
  /** Elevation at bearings 0, 360/n, … */
  elevationDeg: Float64Array
  /** Index into the plan's obstacles of what stands highest there; -1 where the sky is open to the horizon. */
  obstacleAt: Int32Array
  /** In the order of the plan. */
  obstacles: ObstacleSeen[]
  /** The steepest of all; 0 in the open. */
  worstDeg: number
  /** Solid angle of sky hidden over that of the hemisphere: the mean of sin(elevation) over bearings. 0 to 1. */
  blockedShare: number
  /** Mean elevation over bearings, which the wind formula of the handbook takes ([WMO8] 6.4.1). */
  meanDeg: number
}

const DEG = 180 / Math.PI

/**
 * @param bearings  at how many bearings the line is drawn; the worst angles do not depend on it
 */
export function skylineAt(plan: Pick<YardPlan, 'obstacles'>, at: YardPoint, rimM: number, bearings = 360): Skyline {
  const tangents = new Float64Array(bearings)
  const obstacleAt = new Int32Array(bearings).fill(-1)
  const obstacles: ObstacleSeen[] = []
  let worst = 0
  for (const [index, obstacle] of plan.obstacles.entries()) {
    const { straight, round } = topEdges(obstacle)
    for (let start = 0; start < straight.length; start += 6) {
      raiseByStraight(straight, start, at.xM, at.yM, rimM, tangents, 0, obstacleAt, index)
    }
    for (let start = 0; start < round.length; start += 4) {
      raiseByRound(round, start, at.xM, at.yM, rimM, tangents, 0, obstacleAt, index)
    }
    const seen = obstacleSeen(obstacle, at, rimM)
    obstacles.push(seen)
    worst = Math.max(worst, seen.elevationDeg)
  }
  const elevationDeg = tangents.map((tangent) => Math.atan(tangent) * DEG)
  let blocked = 0
  let sum = 0
  for (let k = 0; k < bearings; k++) {
    blocked += Math.sin(elevationDeg[k]! / DEG)
    sum += elevationDeg[k]!
  }
  return {
    at,
    rimM,
    elevationDeg,
    obstacleAt,
    obstacles,
    worstDeg: worst,
    blockedShare: blocked / bearings,
    meanDeg: sum / bearings,
  }
}

/** What one obstacle is, seen from a rim. */
export function obstacleSeen(obstacle: Obstacle, at: YardPoint, rimM: number): ObstacleSeen {
  const { straight, round } = topEdges(obstacle)
  const one = { tangent: 0, distanceM: 0, bearingRad: 0 }
  const most = { tangent: Number.NEGATIVE_INFINITY, distanceM: Number.NaN, bearingRad: 0 }
  for (let start = 0; start < straight.length; start += 6) {
    steepestOfStraight(straight, start, at.xM, at.yM, rimM, one)
    if (one.tangent > most.tangent) Object.assign(most, one)
  }
  for (let start = 0; start < round.length; start += 4) {
    steepestOfRound(round, start, at.xM, at.yM, rimM, one)
    if (one.tangent > most.tangent || Number.isNaN(most.distanceM)) Object.assign(most, one)
  }
  const nearestM = distanceToObstacleM(obstacle, at)
  const rises = most.tangent > 0
  return {
    obstacleId: obstacle.id,
    elevationDeg: rises ? (nearestM <= 0 ? 90 : Math.atan(most.tangent) * DEG) : 0,
    bearingDeg: (most.bearingRad * DEG + 360) % 360,
    distanceM: most.distanceM,
    aboveRimM: rises ? (nearestM <= 0 ? Math.max(...heights(obstacle)) - rimM : most.tangent * most.distanceM) : 0,
    ratio: rises ? (nearestM <= 0 ? 0 : 1 / most.tangent) : Number.POSITIVE_INFINITY,
    nearestM,
  }
}

function heights({ shape }: Obstacle): number[] {
  return shape.form === 'gable' ? [shape.eavesM, shape.ridgeM] : [shape.topM]
}
