/**
 * Gauges (or any points) as the kernels want them: positions on one metric plane. Rows in degrees are projected; rows
 * already on a plane are taken as they are.
 */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { type Projection, projectionFor, toPlane } from './projection.ts'

export interface GeoRow {
  id: string
  latDeg: number
  lonDeg: number
  elevationM: number | null
}

export interface PlaneRow {
  id: string
  xM: number
  yM: number
  elevationM: number | null
}

/**
 * @param rows        all in degrees or all in metres
 * @param projection  for rows in degrees: the plane they share with other sets; centred on the rows themselves when
 *   not given. To bring points onto the gauges' plane pass projectionFor(gauge rows).
 * @returns elevation NaN where unknown
 */
export function placeGauges(rows: readonly GeoRow[] | readonly PlaneRow[], projection?: Projection): GaugeSet {
  const n = rows.length
  const set: GaugeSet = {
    ids: rows.map((row) => row.id),
    xM: new Float64Array(n),
    yM: new Float64Array(n),
    elevationM: new Float64Array(n).fill(Number.NaN),
  }
  const plane = projection ?? (inDegrees(rows) ? projectionFor(rows) : undefined)
  rows.forEach((row, g) => {
    const at = 'latDeg' in row ? toPlane(plane!, row.latDeg, row.lonDeg) : row
    set.xM[g] = at.xM
    set.yM[g] = at.yM
    if (row.elevationM !== null) set.elevationM[g] = row.elevationM
  })
  return set
}

function inDegrees(rows: readonly GeoRow[] | readonly PlaneRow[]): rows is readonly GeoRow[] {
  return rows.length > 0 && 'latDeg' in rows[0]!
}
