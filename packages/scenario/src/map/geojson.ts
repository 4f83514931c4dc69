/** The few GeoJSON shapes the base map needs. Source: [RFC7946]: degrees, longitude first, outer rings counter-clockwise. */
import { type Position, positionDeg } from './geoFrame.ts'
import { isInsideRing, type Point, ringArea } from './line.ts'

export type Geometry =
  | { type: 'Point'; coordinates: Position }
  | { type: 'MultiLineString'; coordinates: Position[][] }
  | { type: 'MultiPolygon'; coordinates: Position[][][] }

export interface Feature {
  type: 'Feature'
  properties: { name: string; order?: number; rank?: number; elevationM?: number }
  geometry: Geometry
}

export interface FeatureCollection {
  type: 'FeatureCollection'
  features: Feature[]
}

export function collection(features: Feature[]): FeatureCollection {
  return { type: 'FeatureCollection', features }
}

export function toDegrees(line: readonly Point[]): Position[] {
  return line.map(([x, y]) => positionDeg(x, y))
}

/**
 * Polygons from closed rings on the plane: counter-clockwise rings are outer ones, clockwise rings are holes and go to
 * the smallest outer ring around them.
 */
export function multiPolygon(rings: readonly (readonly Point[])[]): Geometry {
  const outers = rings
    .filter((ring) => ringArea(ring) > 0)
    .sort((a, b) => ringArea(a) - ringArea(b))
    .map((ring) => ({ ring, rings: [toDegrees(ring)] }))
  for (const hole of rings) {
    if (ringArea(hole) >= 0) continue
    const [x, y] = hole[0]!
    outers.find((outer) => isInsideRing(x, y, outer.ring))?.rings.push(toDegrees(hole))
  }
  return { type: 'MultiPolygon', coordinates: outers.map((outer) => outer.rings) }
}
