/** Lines of equal amount over a grid, by marching squares (d3-contour) with linear interpolation between cell middles. */
import { contours } from 'd3-contour'
import type { GridFrame } from './fieldGrid.ts'

/** [x, y] in the unit of the grid's frame: [lonDeg, latDeg] for a grid in degrees. */
export type Position = [number, number]

export interface Isohyet {
  levelMm: number
  /** Open or closed lines; they end at the edge of the grid and where values are missing. */
  lines: Position[][]
  /** The ground at or above the level, as MultiPolygon coordinates: outer rings counter-clockwise, holes clockwise. */
  polygons: Position[][][]
}

/**
 * @param valuesMm  columns × rows, row 0 in the north; NaN where there is no value
 * @returns one isohyet for each level that the values reach
 */
export function isohyets(valuesMm: Float64Array, frame: GridFrame, levelsMm: readonly number[]): Isohyet[] {
  const { columns, rows } = frame
  const generate = contours().size([columns, rows]).smooth(true)
  const values = Array.from(valuesMm)
  let largest = Number.NEGATIVE_INFINITY
  for (const value of values) if (!Number.isNaN(value)) largest = Math.max(largest, value)
  const width = (frame.east - frame.west) / columns
  const height = (frame.north - frame.south) / rows
  const place = ([c, r]: number[]): Position => [frame.west + c! * width, frame.north - r! * height]
  const isEdge = ([c, r]: number[]): boolean => {
    if (c! <= 0 || r! <= 0 || c! >= columns || r! >= rows) return true
    // Next to a cell without value the line only follows the gap.
    for (const column of [Math.floor(c! - 0.5 - 1e-9), Math.ceil(c! - 0.5 + 1e-9)])
      for (const row of [Math.floor(r! - 0.5 - 1e-9), Math.ceil(r! - 0.5 + 1e-9)])
        if (column >= 0 && column < columns && row >= 0 && row < rows && Number.isNaN(values[row * columns + column]!))
          return true
    return false
  }
  const out: Isohyet[] = []
  for (const levelMm of levelsMm) {
    if (!(largest >= levelMm)) continue
    const { coordinates } = generate.contour(values, levelMm)
    out.push({
      levelMm,
      lines: coordinates
        .flatMap((polygon) => polygon.flatMap((ring) => openLines(ring, isEdge)))
        .map((l) => l.map(place)),
      polygons: coordinates.map((polygon) => polygon.map((ring) => ring.map(place))),
    })
  }
  return out
}

/** A ring without its stretches along the edge: the ring itself, or one line for each piece left. */
function openLines(ring: number[][], isEdge: (point: number[]) => boolean): number[][][] {
  const corners = ring.slice(0, -1)
  const firstEdge = corners.findIndex(isEdge)
  if (firstEdge < 0) return [ring]
  const lines: number[][][] = []
  let line: number[][] = []
  for (let k = 1; k <= corners.length; k++) {
    const point = corners[(firstEdge + k) % corners.length]!
    if (!isEdge(point)) line.push(point)
    else {
      if (line.length > 1) lines.push(line)
      line = []
    }
  }
  return lines
}
