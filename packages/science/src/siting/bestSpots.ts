/**
 * Where in a yard the gauge should stand. Every cell of a grid over the outline gets its worst elevation angle and its share
 * of sky hidden, exactly as skyline.ts tells them; cells within an obstacle or too near to a hazard are out. The best
 * place has the lowest worst angle; among places within half a degree of it, the one that sees most sky. Each place found is
 * then refined beyond the grid. The next best lie at a distance, so that three are three.
 */
import { raiseByRound, raiseByStraight, steepestOfRound, steepestOfStraight } from './edgeSeen.ts'
import { type ExposureClass, exposureClass } from './exposureClass.ts'
import { clearanceM, hazardDistances } from './hazards.ts'
import { isInRing } from './ring.ts'
import { type ObstacleSeen, skylineAt } from './skyline.ts'
import { distanceToObstacleM, topEdges } from './topEdges.ts'
import type { YardPlan, YardPoint, YardRing } from './yard.ts'

export interface BestSpotsAsk {
  rimM: number
  /** At most 1 m; finer by itself where the yard is small. */
  cellM?: number
  /** How many places. Default 3. */
  count?: number
  /** Called with the share done, 0 to 1, some twenty times. */
  onProgress?: (share: number) => void
}

export interface Spot {
  at: YardPoint
  worstDeg: number
  blockedShare: number
  class: ExposureClass
  /** What stands steepest there; null where nothing rises above the rim. */
  worst: ObstacleSeen | null
  /** To the nearest hazard beyond what it needs, m; infinite where there is none. */
  hazardSpareM: number
}

/** Rows from south to north, cells from west to east; NaN where no gauge may stand. */
export interface SpotGrid {
  westM: number
  southM: number
  cellM: number
  columns: number
  rows: number
  worstDeg: Float32Array
  blockedShare: Float32Array
}

export interface BestSpots {
  grid: SpotGrid
  /** Best first; empty where no cell is allowed. */
  spots: Spot[]
  /** Cells within the outline, and how many of them are out for what reason. */
  cells: { inside: number; inObstacle: number; nearHazard: number }
}

const DEG = 180 / Math.PI
const SAME_DEG = 0.5
const SKY_BEARINGS = 120
const MOST_CELLS = 40_000
const AIMED_CELLS = 4_000
const FINEST_M = 0.25
/** A gauge needs this much room beside what stands there. */
const ROOM_M = 0.3
const REFINED_M = 0.05

export function bestSpots(plan: YardPlan, ask: BestSpotsAsk): BestSpots {
  const place = placeMeter(plan, ask.rimM)
  const grid = emptyGrid(plan.outline, ask.cellM)
  const cells = { inside: 0, inObstacle: 0, nearHazard: 0 }
  const every = Math.max(1, Math.floor(grid.rows / 20))
  for (let row = 0; row < grid.rows; row++) {
    const yM = grid.southM + (row + 0.5) * grid.cellM
    for (let column = 0; column < grid.columns; column++) {
      const xM = grid.westM + (column + 0.5) * grid.cellM
      if (!isInRing(plan.outline, { xM, yM })) continue
      cells.inside++
      const out = place.out(xM, yM)
      if (out !== null) {
        cells[out]++
        continue
      }
      const index = row * grid.columns + column
      grid.worstDeg[index] = place.worstDeg(xM, yM)
      grid.blockedShare[index] = place.blockedShare(xM, yM)
    }
    if (row % every === 0) ask.onProgress?.((row + 1) / grid.rows)
  }
  const spots = chooseSpots(grid, ask.count ?? 3, (xM, yM, isFree) =>
    refine(plan.outline, place, xM, yM, grid.cellM, isFree),
  )
  ask.onProgress?.(1)
  const ground = { slopeDeg: plan.slopeDeg, hasWindShield: plan.gauge?.hasWindShield ?? false }
  return {
    grid,
    cells,
    spots: spots.map((at) => {
      const skyline = skylineAt(plan, at, ask.rimM)
      const steepest = skyline.obstacles.reduce<ObstacleSeen | null>(
        (worst, one) => (one.elevationDeg > (worst?.elevationDeg ?? 0) ? one : worst),
        null,
      )
      const spare = hazardDistances(plan, at).map(({ distanceM, neededM }) => distanceM - neededM)
      return {
        at,
        worstDeg: skyline.worstDeg,
        blockedShare: skyline.blockedShare,
        class: exposureClass(skyline, ground).class,
        worst: steepest,
        hazardSpareM: Math.min(Number.POSITIVE_INFINITY, ...spare),
      }
    }),
  }
}

interface PlaceMeter {
  /** Why no gauge may stand there; null where it may. */
  out: (xM: number, yM: number) => 'inObstacle' | 'nearHazard' | null
  worstDeg: (xM: number, yM: number) => number
  blockedShare: (xM: number, yM: number) => number
}

/** All edges of a plan in one array each, measured without allocating. */
function placeMeter(plan: YardPlan, rimM: number): PlaceMeter {
  const edges = plan.obstacles.map(topEdges)
  const straight = Float64Array.from(edges.flatMap((one) => [...one.straight]))
  const round = Float64Array.from(edges.flatMap((one) => [...one.round]))
  const tangents = new Float64Array(SKY_BEARINGS)
  const seen = { tangent: 0, distanceM: 0, bearingRad: 0 }
  const hazards = plan.hazards.map((hazard) => ({ ...hazard.at, neededM: clearanceM(hazard) }))
  const roofs = plan.obstacles.filter(({ kind }) => kind === 'house' || kind === 'shed')
  return {
    out: (xM, yM) => {
      const at = { xM, yM }
      for (const obstacle of plan.obstacles) {
        if (obstacle.shape.form !== 'bearing' && distanceToObstacleM(obstacle, at) < ROOM_M) return 'inObstacle'
      }
      for (const hazard of hazards) {
        if (Math.hypot(hazard.xM - xM, hazard.yM - yM) < hazard.neededM) return 'nearHazard'
      }
      for (const roof of roofs) if (distanceToObstacleM(roof, at) < 1.5) return 'nearHazard'
      return null
    },
    worstDeg: (xM, yM) => {
      let worst = 0
      for (let start = 0; start < straight.length; start += 6) {
        steepestOfStraight(straight, start, xM, yM, rimM, seen)
        if (seen.tangent > worst) worst = seen.tangent
      }
      for (let start = 0; start < round.length; start += 4) {
        steepestOfRound(round, start, xM, yM, rimM, seen)
        if (seen.tangent > worst) worst = seen.tangent
      }
      return Math.atan(worst) * DEG
    },
    blockedShare: (xM, yM) => {
      tangents.fill(0)
      for (let start = 0; start < straight.length; start += 6) {
        raiseByStraight(straight, start, xM, yM, rimM, tangents, 0, null, 0)
      }
      for (let start = 0; start < round.length; start += 4) {
        raiseByRound(round, start, xM, yM, rimM, tangents, 0, null, 0)
      }
      let sum = 0
      for (let k = 0; k < SKY_BEARINGS; k++) {
        const tangent = tangents[k]!
        sum += tangent === Number.POSITIVE_INFINITY ? 1 : tangent / Math.sqrt(1 + tangent * tangent)
      }
      return sum / SKY_BEARINGS
    },
  }
}

function emptyGrid(outline: YardRing, askedM: number | undefined): SpotGrid {
  const xs = outline.map(({ xM }) => xM)
  const ys = outline.map(({ yM }) => yM)
  const [westM, southM] = [Math.min(...xs), Math.min(...ys)]
  const [widthM, heightM] = [Math.max(...xs) - westM, Math.max(...ys) - southM]
  const fine = Math.min(1, Math.max(FINEST_M, Math.sqrt((widthM * heightM) / AIMED_CELLS)))
  // Over a very large yard the cells grow instead of the waiting.
  const cellM = Math.max(askedM ?? fine, Math.sqrt((widthM * heightM) / MOST_CELLS))
  const columns = Math.max(1, Math.ceil(widthM / cellM))
  const rows = Math.max(1, Math.ceil(heightM / cellM))
  const worstDeg = new Float32Array(columns * rows).fill(Number.NaN)
  return { westM, southM, cellM, columns, rows, worstDeg, blockedShare: worstDeg.slice() }
}

function chooseSpots(
  grid: SpotGrid,
  count: number,
  refined: (xM: number, yM: number, isFree: (xM: number, yM: number) => boolean) => YardPoint,
): YardPoint[] {
  const spots: YardPoint[] = []
  const apartM = Math.max(2, 0.15 * Math.max(grid.columns, grid.rows) * grid.cellM)
  const middle = (index: number): YardPoint => ({
    xM: grid.westM + ((index % grid.columns) + 0.5) * grid.cellM,
    yM: grid.southM + (Math.floor(index / grid.columns) + 0.5) * grid.cellM,
  })
  const isApart = (xM: number, yM: number) => spots.every((spot) => Math.hypot(spot.xM - xM, spot.yM - yM) >= apartM)
  const isFree = (index: number) => {
    if (Number.isNaN(grid.worstDeg[index]!)) return false
    const { xM, yM } = middle(index)
    return isApart(xM, yM)
  }
  while (spots.length < count) {
    let least = Number.POSITIVE_INFINITY
    for (let index = 0; index < grid.worstDeg.length; index++) {
      if (grid.worstDeg[index]! < least && isFree(index)) least = grid.worstDeg[index]!
    }
    if (least === Number.POSITIVE_INFINITY) break
    let chosen = -1
    for (let index = 0; index < grid.worstDeg.length; index++) {
      if (!(grid.worstDeg[index]! <= least + SAME_DEG) || !isFree(index)) continue
      if (chosen < 0 || grid.blockedShare[index]! < grid.blockedShare[chosen]!) chosen = index
    }
    const { xM, yM } = middle(chosen)
    spots.push(refined(xM, yM, isApart))
  }
  return spots
}

/**
 * Pattern search from a cell's middle, no further than a cell: the worst angle first, hidden sky where that stays within a
 * twentieth degree.
 */
function refine(
  outline: YardRing,
  place: PlaceMeter,
  fromX: number,
  fromY: number,
  cellM: number,
  isFree: (xM: number, yM: number) => boolean,
): YardPoint {
  let best = { xM: fromX, yM: fromY }
  let worst = place.worstDeg(fromX, fromY)
  let blocked = place.blockedShare(fromX, fromY)
  for (let stepM = cellM / 2; stepM >= REFINED_M; stepM /= 2) {
    for (let round = 0, moved = true; moved && round < 40; round++) {
      moved = false
      for (let turn = 0; turn < 8; turn++) {
        const xM = best.xM + stepM * Math.sin((turn * Math.PI) / 4)
        const yM = best.yM + stepM * Math.cos((turn * Math.PI) / 4)
        if (Math.max(Math.abs(xM - fromX), Math.abs(yM - fromY)) > cellM || !isFree(xM, yM)) continue
        if (!isInRing(outline, { xM, yM }) || place.out(xM, yM) !== null) continue
        const trial = place.worstDeg(xM, yM)
        if (trial > worst + 0.05) continue
        const trialBlocked = place.blockedShare(xM, yM)
        if (trial < worst - 0.05 || trialBlocked < blocked - 1e-4) {
          best = { xM, yM }
          worst = trial
          blocked = trialBlocked
          moved = true
        }
      }
    }
  }
  return best
}
