/**
 * Where the map of a network is drawn: a regular grid in degrees over its outline (or round its gauges where there is
 * none), the grid's cells on the kernels' plane, and the named areas. Worked out once per network and base map.
 */
import {
  type AreaRings,
  distanceM,
  isInside,
  type Projection,
  projectionFor,
  ringsFromGeoJson,
  toPlane,
} from '@gaugewright/science'
import type { Gauge, MapLayer } from '../../ports/ledger.ts'

export interface MapGrid {
  west: number
  south: number
  east: number
  north: number
  columns: number
  rows: number
  /** Cell centres inside the outline, row 0 in the north: their places in the grid, and themselves on the plane. */
  cells: Int32Array
  points: { xM: Float64Array; yM: Float64Array }
  /** Of all cells inside the outline together. */
  areaM2: number
}

export interface NamedArea {
  name: string
  rings: AreaRings
}

export interface MapFrame {
  projection: Projection
  outline: AreaRings
  areas: NamedArea[]
}

interface Feature {
  properties?: { name?: unknown } | null
  geometry?: { type: string; coordinates: unknown } | null
}

export function mapFrame(gauges: readonly Gauge[], layers: readonly MapLayer[]): MapFrame {
  const projection = projectionFor(gauges)
  const ringsOf = (feature: Feature): AreaRings =>
    feature.geometry == null
      ? []
      : ringsFromGeoJson(feature.geometry, (lonDeg, latDeg) => toPlane(projection, latDeg, lonDeg))
  const featuresOf = (kind: MapLayer['kind']): Feature[] =>
    layers.filter((layer) => layer.kind === kind).flatMap((layer) => featuresIn(layer.geojson))
  return {
    projection,
    outline: featuresOf('outline').flatMap(ringsOf),
    areas: featuresOf('area').map((feature, index) => ({
      name: typeof feature.properties?.name === 'string' ? feature.properties.name : `Area ${index + 1}`,
      rings: ringsOf(feature),
    })),
  }
}

function featuresIn(geojson: unknown): Feature[] {
  if (typeof geojson !== 'object' || geojson === null) return []
  if ('features' in geojson && Array.isArray(geojson.features)) return geojson.features as Feature[]
  return 'geometry' in geojson ? [geojson as Feature] : []
}

/** Margin round the gauges where there is no outline, as a share of their extent. */
const MARGIN = 0.08

/**
 * @param most  columns or rows along the longer side
 * @param layers  the outline's corners in degrees bound the grid; gauges alone where there is none
 */
export function mapGrid(frame: MapFrame, gauges: readonly Gauge[], layers: readonly MapLayer[], most: number): MapGrid {
  const { west, south, east, north } = boundsDeg(gauges, layers)
  const midLat = ((south + north) / 2) * (Math.PI / 180)
  const widthDeg = (east - west) * Math.max(0.05, Math.cos(midLat))
  const heightDeg = north - south
  const stepDeg = Math.max(widthDeg, heightDeg) / most
  const columns = Math.max(2, Math.round(widthDeg / stepDeg))
  const rows = Math.max(2, Math.round(heightDeg / stepDeg))
  const cells: number[] = []
  const xM: number[] = []
  const yM: number[] = []
  for (let row = 0; row < rows; row++) {
    const latDeg = north - ((row + 0.5) * (north - south)) / rows
    for (let column = 0; column < columns; column++) {
      const lonDeg = west + ((column + 0.5) * (east - west)) / columns
      const at = toPlane(frame.projection, latDeg, lonDeg)
      if (frame.outline.length > 0 && !isInside(frame.outline, at.xM, at.yM)) continue
      cells.push(row * columns + column)
      xM.push(at.xM)
      yM.push(at.yM)
    }
  }
  const points = { xM: Float64Array.from(xM), yM: Float64Array.from(yM) }
  const midLatDeg = (south + north) / 2
  const cellM2 = (distanceM(midLatDeg, west, midLatDeg, east) * distanceM(south, west, north, west)) / (columns * rows)
  const areaM2 = cells.length * cellM2
  return { west, south, east, north, columns, rows, cells: Int32Array.from(cells), points, areaM2 }
}

function boundsDeg(
  gauges: readonly Gauge[],
  layers: readonly MapLayer[],
): { west: number; south: number; east: number; north: number } {
  const bounds = { west: 180, south: 90, east: -180, north: -90 }
  const take = (lonDeg: number, latDeg: number): void => {
    bounds.west = Math.min(bounds.west, lonDeg)
    bounds.east = Math.max(bounds.east, lonDeg)
    bounds.south = Math.min(bounds.south, latDeg)
    bounds.north = Math.max(bounds.north, latDeg)
  }
  for (const layer of layers) if (layer.kind === 'outline') eachPosition(layer.geojson, take)
  if (bounds.west <= bounds.east) return bounds
  for (const gauge of gauges) take(gauge.lonDeg, gauge.latDeg)
  const lonMargin = Math.max(0.02, MARGIN * (bounds.east - bounds.west))
  const latMargin = Math.max(0.02, MARGIN * (bounds.north - bounds.south))
  return {
    west: bounds.west - lonMargin,
    east: bounds.east + lonMargin,
    south: bounds.south - latMargin,
    north: bounds.north + latMargin,
  }
}

function eachPosition(geojson: unknown, take: (lonDeg: number, latDeg: number) => void): void {
  const walk = (value: unknown): void => {
    if (!Array.isArray(value)) return
    if (typeof value[0] === 'number' && typeof value[1] === 'number') take(value[0], value[1])
    else for (const part of value) walk(part)
  }
  for (const feature of featuresIn(geojson)) walk(feature.geometry?.coordinates)
}
