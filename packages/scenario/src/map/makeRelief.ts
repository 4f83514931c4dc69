/** Hypsometric bands for the base map: each feature is the ground of the basin at or above its `elevationM`. */
import { fractal, gradientNoise } from '../random/gradientNoise.ts'
import type { Random } from '../random/random.ts'
import { type Grid, sampleGrid } from '../terrain/grid.ts'
import { contourRings } from './contourRings.ts'
import { type Feature, multiPolygon } from './geojson.ts'
import { distanceToSegment, type Point, ringArea, thinLine } from './line.ts'

const LEVELS_M = [250, 300, 350, 400, 500, 600, 750, 900, 1100, 1300, 1500, 1700] as const
const FINE_CELL_M = 500
const SMALLEST_M2 = 1.6e6
/** Small unevenness below the terrain's cell, so that contours are not ruled lines. */
const ROUGHNESS_M = 14

export function reliefFeatures(elevation: Grid, outline: readonly Point[], random: Random): Feature[] {
  const rough = fractal(gradientNoise(random), 3)
  const fine = fineGrid(elevation, (x, y) => sampleGrid(elevation, x, y) + ROUGHNESS_M * rough(x / 3500, y / 3500))
  const inside = insideDistance(fine, outline)
  const features: Feature[] = [band([outline], 100)]
  for (const levelM of LEVELS_M) {
    const above: Grid = {
      ...fine,
      values: fine.values.map((heightM, cell) => Math.min(heightM - levelM, inside[cell]!)),
    }
    const rings = contourRings(above)
      .filter((ring) => Math.abs(ringArea(ring)) >= SMALLEST_M2)
      .map((ring) => thinLine(ring, 110))
    if (rings.length > 0) features.push(band(rings, levelM))
  }
  return features
}

function band(rings: readonly (readonly Point[])[], elevationM: number): Feature {
  return { type: 'Feature', properties: { name: `${elevationM} m`, elevationM }, geometry: multiPolygon(rings) }
}

function fineGrid(elevation: Grid, heightAt: (xM: number, yM: number) => number): Grid {
  const share = elevation.cellM / FINE_CELL_M
  const columns = Math.round((elevation.columns - 1) * share) + 1
  const rows = Math.round((elevation.rows - 1) * share) + 1
  const values = new Float64Array(columns * rows)
  for (let cell = 0; cell < values.length; cell++) {
    const column = cell % columns
    const row = (cell - column) / columns
    values[cell] = heightAt(elevation.originXM + column * FINE_CELL_M, elevation.originYM + row * FINE_CELL_M)
  }
  return { ...elevation, columns, rows, cellM: FINE_CELL_M, values }
}

/** Distance (m) of each cell to the outline, at most 2 km; negative outside it and on the grid's rim. */
function insideDistance(grid: Grid, outline: readonly Point[]): Float64Array {
  const farM = 2000
  const distance = new Float64Array(grid.values.length).fill(farM)
  const columnOf = (xM: number) => Math.round((xM - grid.originXM) / grid.cellM)
  const rowOf = (yM: number) => Math.round((yM - grid.originYM) / grid.cellM)
  const reach = farM / grid.cellM
  for (let index = 1; index < outline.length; index++) {
    const from = outline[index - 1]!
    const to = outline[index]!
    const firstRow = Math.max(0, rowOf(Math.min(from[1], to[1])) - reach)
    const lastRow = Math.min(grid.rows - 1, rowOf(Math.max(from[1], to[1])) + reach)
    const firstColumn = Math.max(0, columnOf(Math.min(from[0], to[0])) - reach)
    const lastColumn = Math.min(grid.columns - 1, columnOf(Math.max(from[0], to[0])) + reach)
    for (let row = firstRow; row <= lastRow; row++) {
      for (let column = firstColumn; column <= lastColumn; column++) {
        const cell = row * grid.columns + column
        const point: Point = [grid.originXM + column * grid.cellM, grid.originYM + row * grid.cellM]
        distance[cell] = Math.min(distance[cell]!, distanceToSegment(point, from, to))
      }
    }
  }
  for (let row = 0; row < grid.rows; row++) signRowInPlace(grid, outline, row, distance)
  return distance
}

/** Turn the distance negative left and right of the stretches of this row that lie inside. */
function signRowInPlace(grid: Grid, outline: readonly Point[], row: number, distance: Float64Array): void {
  const yM = grid.originYM + row * grid.cellM
  const crossings: number[] = []
  for (let index = 1; index < outline.length; index++) {
    const [ax, ay] = outline[index - 1]!
    const [bx, by] = outline[index]!
    if (ay > yM !== by > yM) crossings.push(ax + ((bx - ax) * (yM - ay)) / (by - ay))
  }
  crossings.sort((a, b) => a - b)
  let passed = 0
  for (let column = 0; column < grid.columns; column++) {
    const xM = grid.originXM + column * grid.cellM
    while (passed < crossings.length && crossings[passed]! < xM) passed++
    const isRim = row === 0 || column === 0 || row === grid.rows - 1 || column === grid.columns - 1
    const cell = row * grid.columns + column
    if (passed % 2 === 0 || isRim) distance[cell] = -Math.max(distance[cell]!, 1)
  }
}
