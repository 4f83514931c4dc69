/**
 * An upland basin that rivers have cut: a ring of high ground with one gap, raised and worn down until slopes and
 * streams balance. Rate of wear: upstream area^0.45 × slope, solved implicitly [Braun2013]. Which cells belong to the
 * basin follows from the drainage alone. Lengths in m; the plane is about 200 × 150 km and the basin 180 × 130 km.
 */
import { fractal, gradientNoise, ridged } from '../random/gradientNoise.ts'
import type { Random } from '../random/random.ts'
import { type Drainage, drainInPlace } from './drainage.ts'
import { type Grid, smoothGrid } from './grid.ts'

export interface Terrain {
  elevation: Grid
  drainage: Drainage
  /** 1 for the cells whose water leaves through the basin's outlet. */
  inBasin: Uint8Array
  outletCell: number
}

const CELL_M = 1000
const COLUMNS = 204
const ROWS = 152
const HIGHEST_M = 1840
const OUTLET_M = 210
const AREA_EXPONENT = 0.45

export function makeTerrain(random: Random): Terrain {
  const elevation: Grid = {
    columns: COLUMNS,
    rows: ROWS,
    cellM: CELL_M,
    originXM: (-(COLUMNS - 1) / 2) * CELL_M,
    originYM: (-(ROWS - 1) / 2) * CELL_M,
    values: new Float64Array(COLUMNS * ROWS),
  }
  const uplift = makeUplift(elevation, random)
  for (let cell = 0; cell < uplift.length; cell++) elevation.values[cell] = 40 * uplift[cell]! + 6 * random.next()
  for (let round = 0; round < 45; round++) wearInPlace(elevation, uplift, round < 12 ? 2 : 8)
  const worn = smoothGrid(elevation, 1)
  const drainage = drainInPlace(worn)
  const outletCell = findOutlet(worn, drainage)
  const inBasin = markBasin(drainage, outletCell)
  scaleInPlace(worn, inBasin, outletCell)
  return { elevation: worn, drainage, inBasin, outletCell }
}

/** Rate at which each cell is raised: high along the ring, low in the main valley and in the gap to the east. */
function makeUplift(grid: Grid, random: Random): Float64Array {
  const warp = fractal(gradientNoise(random), 3)
  const ridges = ridged(gradientNoise(random), 4)
  const blocks = fractal(gradientNoise(random), 4)
  const valley = mainValley(random)
  const uplift = new Float64Array(grid.columns * grid.rows)
  for (let cell = 0; cell < uplift.length; cell++) {
    const xKm = (grid.originXM + (cell % grid.columns) * grid.cellM) / 1000
    const yKm = (grid.originYM + Math.floor(cell / grid.columns) * grid.cellM) / 1000
    const warpedX = xKm + 17 * warp(xKm / 62, yKm / 62)
    const warpedY = yKm + 17 * warp(xKm / 62 + 40, yKm / 62 - 40)
    const radius = Math.hypot(warpedX / 86, warpedY / 60)
    const bearing = Math.atan2(warpedY / 60, warpedX / 86)
    const gap = Math.exp(-(((bearing + 0.34) / 0.17) ** 2)) * (radius > 0.6 ? 1 : 0.5)
    const west = 0.5 - 0.5 * Math.cos(bearing)
    const ring = Math.exp(-(((radius - 1) / 0.2) ** 2)) * (0.75 + 0.45 * west) * (1 - 0.97 * gap)
    const hills =
      Math.max(0, 0.5 * ridges(xKm / 55, yKm / 55) + 0.55 * blocks(xKm / 50, yKm / 50)) * (radius < 1.1 ? 1 : 0.3)
    const nearValley = Math.exp(-((distanceToPath(valley, warpedX, warpedY) / 13) ** 2))
    const inside = 0.12 + 1.25 * hills * (1 - 0.85 * nearValley)
    uplift[cell] =
      (ring * (0.7 + 0.6 * ridges(xKm / 38 + 9, yKm / 38)) + inside * (1 - 0.5 * gap)) * (1 - 0.5 * nearValley)
  }
  return uplift
}

/** Points (km) of the main valley from the western heights to the gap. */
function mainValley(random: Random): [number, number][] {
  const wander = () => random.between(-6, 6)
  return [
    [-66, 22 + wander()],
    [-42, 12 + wander()],
    [-16, -2 + wander()],
    [12, 4 + wander()],
    [38, -9 + wander()],
    [64, -16],
    [104, -26],
  ]
}

function distanceToPath(path: readonly [number, number][], x: number, y: number): number {
  let best = Number.POSITIVE_INFINITY
  for (let index = 1; index < path.length; index++) {
    const [ax, ay] = path[index - 1]!
    const [bx, by] = path[index]!
    const length2 = (bx - ax) ** 2 + (by - ay) ** 2
    const share = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length2))
    best = Math.min(best, Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay)))
  }
  return best
}

function wearInPlace(grid: Grid, uplift: Float64Array, stepLength: number): void {
  const { receiver, order, upstreamCells } = drainInPlace(grid)
  const { values, columns } = grid
  for (let index = 0; index < order.length; index++) {
    const cell = order[index]!
    const to = receiver[cell]!
    if (to === cell) {
      values[cell] = 0
      continue
    }
    const isDiagonal = to % columns !== cell % columns && Math.abs(to - cell) > 1
    const wear = (0.11 * stepLength * upstreamCells[cell]! ** AREA_EXPONENT) / (isDiagonal ? Math.SQRT2 : 1)
    values[cell] = (values[cell]! + stepLength * 30 * uplift[cell]! + wear * values[to]!) / (1 + wear)
  }
}

/** The rim cell with the largest catchment. */
function findOutlet(grid: Grid, drainage: Drainage): number {
  let outlet = 0
  for (let cell = 0; cell < drainage.receiver.length; cell++) {
    if (drainage.receiver[cell] !== cell) continue
    if (drainage.upstreamCells[cell]! > drainage.upstreamCells[outlet]!) outlet = cell
  }
  return insideOutlet(grid, drainage, outlet)
}

/** Upstream along the largest branch until the river has left the lowland outside the gap. */
function insideOutlet(grid: Grid, drainage: Drainage, rimCell: number): number {
  let cell = rimCell
  while (grid.originXM + (cell % grid.columns) * grid.cellM > 88_000) {
    let largest = -1
    for (let other = 0; other < drainage.receiver.length; other++) {
      if (drainage.receiver[other] !== cell || other === cell) continue
      if (largest === -1 || drainage.upstreamCells[other]! > drainage.upstreamCells[largest]!) largest = other
    }
    if (largest === -1) break
    cell = largest
  }
  return cell
}

function markBasin(drainage: Drainage, outletCell: number): Uint8Array {
  const inBasin = new Uint8Array(drainage.receiver.length)
  inBasin[outletCell] = 1
  for (const cell of drainage.order) if (inBasin[drainage.receiver[cell]!] === 1) inBasin[cell] = 1
  return inBasin
}

/** Stretch heights so that the outlet lies at OUTLET_M and the highest cell of the basin at HIGHEST_M. */
function scaleInPlace(grid: Grid, inBasin: Uint8Array, outletCell: number): void {
  const low = grid.values[outletCell]!
  let high = low
  for (let cell = 0; cell < inBasin.length; cell++) {
    if (inBasin[cell] === 1) high = Math.max(high, grid.values[cell]!)
  }
  for (let cell = 0; cell < inBasin.length; cell++) {
    grid.values[cell] = Math.max(60, OUTLET_M + ((grid.values[cell]! - low) / (high - low)) * (HIGHEST_M - OUTLET_M))
  }
}
