/** Regular grids of places for the field, row 0 in the north; values stand for the middle of their cells. */
import { type Projection, toPlane } from '../space/projection.ts'
import type { FieldTargets } from './fieldDay.ts'

/** West, south, east, north: edges of the outermost cells, in degrees or in metres as the grid was asked for. */
export interface GridFrame {
  columns: number
  rows: number
  west: number
  south: number
  east: number
  north: number
}

export interface FieldGrid extends FieldTargets, GridFrame {}

/** A grid even in degrees of longitude and latitude, placed on the gauges' plane. */
export function degreeGrid(frame: GridFrame, projection: Projection): FieldGrid {
  return gridOf(frame, (lonDeg, latDeg) => toPlane(projection, latDeg, lonDeg))
}

/** A grid even in metres of the gauges' plane. */
export function metricGrid(frame: GridFrame): FieldGrid {
  return gridOf(frame, (xM, yM) => ({ xM, yM }))
}

function gridOf(frame: GridFrame, place: (x: number, y: number) => { xM: number; yM: number }): FieldGrid {
  const { columns, rows } = frame
  const xM = new Float64Array(columns * rows)
  const yM = new Float64Array(columns * rows)
  for (let r = 0; r < rows; r++) {
    const y = frame.north - ((r + 0.5) * (frame.north - frame.south)) / rows
    for (let c = 0; c < columns; c++) {
      const at = place(frame.west + ((c + 0.5) * (frame.east - frame.west)) / columns, y)
      xM[r * columns + c] = at.xM
      yM[r * columns + c] = at.yM
    }
  }
  return { ...frame, xM, yM }
}
