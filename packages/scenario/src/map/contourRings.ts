/** Closed rings around the cells of a grid where a value is above zero: marching squares with linear interpolation. */
import type { Grid } from '../terrain/grid.ts'
import type { Point } from './line.ts'

/**
 * @param grid  values at cell centres; the outermost cells must be at or below 0, so that every ring closes
 * @returns rings (m, first point repeated), higher ground on the left: counter-clockwise around heights
 */
export function contourRings(grid: Grid): Point[][] {
  const next = segments(grid)
  const rings: Point[][] = []
  for (const start of next.keys()) {
    if (!next.has(start)) continue
    const ring: Point[] = []
    for (let edge = start; next.has(edge); ) {
      ring.push(crossing(grid, edge))
      const to = next.get(edge)!
      next.delete(edge)
      edge = to
    }
    ring.push(ring[0]!)
    rings.push(ring)
  }
  return rings
}

/** Edge numbers: 2 × cell for the edge to the cell's eastern neighbour, 2 × cell + 1 for the one to the northern. */
function segments(grid: Grid): Map<number, number> {
  const { columns, rows, values } = grid
  const next = new Map<number, number>()
  for (let row = 0; row < rows - 1; row++) {
    for (let column = 0; column < columns - 1; column++) {
      const cell = row * columns + column
      const sw = values[cell]! > 0
      const se = values[cell + 1]! > 0
      const ne = values[cell + columns + 1]! > 0
      const nw = values[cell + columns]! > 0
      const code = (sw ? 1 : 0) + (se ? 2 : 0) + (ne ? 4 : 0) + (nw ? 8 : 0)
      if (code === 0 || code === 15) continue
      const south = 2 * cell
      const west = 2 * cell + 1
      const east = 2 * (cell + 1) + 1
      const north = 2 * (cell + columns)
      const isHighMiddle = values[cell]! + values[cell + 1]! + values[cell + columns]! + values[cell + columns + 1]! > 0
      // Leaving over `from`, entering over `to`, with the high corner on the left.
      if (code === 1) next.set(south, west)
      else if (code === 2) next.set(east, south)
      else if (code === 3) next.set(east, west)
      else if (code === 4) next.set(north, east)
      else if (code === 6) next.set(north, south)
      else if (code === 7) next.set(north, west)
      else if (code === 8) next.set(west, north)
      else if (code === 9) next.set(south, north)
      else if (code === 11) next.set(east, north)
      else if (code === 12) next.set(west, east)
      else if (code === 13) next.set(south, east)
      else if (code === 14) next.set(west, south)
      else if (code === 5) {
        next.set(south, isHighMiddle ? east : west)
        next.set(north, isHighMiddle ? west : east)
      } else {
        next.set(east, isHighMiddle ? north : south)
        next.set(west, isHighMiddle ? south : north)
      }
    }
  }
  return next
}

function crossing(grid: Grid, edge: number): Point {
  const cell = edge >> 1
  const column = cell % grid.columns
  const row = (cell - column) / grid.columns
  const isNorthward = (edge & 1) === 1
  const from = grid.values[cell]!
  const to = grid.values[cell + (isNorthward ? grid.columns : 1)]!
  const share = from === to ? 0.5 : from / (from - to)
  return [
    grid.originXM + (column + (isNorthward ? 0 : share)) * grid.cellM,
    grid.originYM + (row + (isNorthward ? share : 0)) * grid.cellM,
  ]
}
