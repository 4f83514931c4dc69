/** Towns and areas of the base map, for wording a place. What is not GeoJSON as expected is passed over. */
import { isInside, projectionFor, ringsFromGeoJson, toPlane } from '@gaugewright/science'
import type { MapLayer } from '../../ports/ledger.ts'

interface Feature {
  properties: { name?: unknown } | null
  geometry: { type: string; coordinates: unknown } | null
}

export interface Town {
  name: string
  latDeg: number
  lonDeg: number
}

export function townsOf(layers: readonly MapLayer[]): Town[] {
  return featuresOf(layers, 'place').flatMap(({ name, geometry }) => {
    const position = geometry.type === 'Point' ? (geometry.coordinates as [number, number]) : null
    return position === null ? [] : [{ name, lonDeg: position[0], latDeg: position[1] }]
  })
}

/** Name of the area around a place; null outside all. */
export function areaAt(layers: readonly MapLayer[], latDeg: number, lonDeg: number): string | null {
  const projection = projectionFor([{ latDeg, lonDeg }])
  const isAround = ({ geometry }: { geometry: NonNullable<Feature['geometry']> }): boolean =>
    isInside(
      ringsFromGeoJson(geometry, (lon, lat) => toPlane(projection, lat, lon)),
      0,
      0,
    )
  return featuresOf(layers, 'area').find(isAround)?.name ?? null
}

function featuresOf(layers: readonly MapLayer[], kind: MapLayer['kind']) {
  return layers.flatMap((layer) => {
    const features = layer.kind === kind ? (layer.geojson as { features?: Feature[] }).features : undefined
    return (Array.isArray(features) ? features : []).flatMap(({ properties, geometry }) =>
      typeof properties?.name === 'string' && geometry !== null ? [{ name: properties.name, geometry }] : [],
    )
  })
}
