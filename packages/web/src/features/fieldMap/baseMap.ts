/** The base map made ready to draw: each layer of GeoJSON projected once into paths and labels. */
import type { MapLayers } from '@gaugewright/contract'
import { drawLine } from './drawLine.ts'
import type { Bounds, MapFrame } from './mapFrame.ts'

type Position = readonly number[]
type Feature = { properties?: Record<string, unknown> | null; geometry?: { type: string; coordinates: unknown } | null }

export type BasePath = { kind: 'outline' | 'area' | 'river' | 'relief'; path: Path2D; isLine: boolean; rank: number }
export type BaseLabel = { kind: 'place' | 'area' | 'river'; text: string; x: number; y: number; rank: number }
export type BaseMap = { outline: Path2D | null; paths: BasePath[]; labels: BaseLabel[] }

function featuresOf(geojson: unknown): Feature[] {
  const g = geojson as { type?: string; features?: Feature[]; geometry?: unknown; coordinates?: unknown }
  if (g?.type === 'FeatureCollection') return g.features ?? []
  if (g?.type === 'Feature') return [g as Feature]
  return g?.coordinates ? [{ geometry: g as Feature['geometry'] }] : []
}

/** The lines of a geometry: rings of polygons or the lines themselves; empty for points. */
export function linesOf(geometry: Feature['geometry']): Position[][] {
  switch (geometry?.type) {
    case 'LineString':
      return [geometry.coordinates as Position[]]
    case 'Polygon':
    case 'MultiLineString':
      return geometry.coordinates as Position[][]
    case 'MultiPolygon':
      return (geometry.coordinates as Position[][][]).flat()
    default:
      return []
  }
}

/** Bounds in degrees of all outlines, else of all areas; null when the layers hold neither. */
export function boundsOfLayers(layers: MapLayers | undefined): Bounds | null {
  for (const kind of ['outline', 'area'] as const) {
    const bounds = { west: 180, south: 90, east: -180, north: -90 }
    for (const layer of layers?.layers ?? []) {
      if (layer.kind !== kind) continue
      for (const feature of featuresOf(layer.geojson))
        for (const line of linesOf(feature.geometry))
          for (const [lon, lat] of line) {
            bounds.west = Math.min(bounds.west, lon!)
            bounds.east = Math.max(bounds.east, lon!)
            bounds.south = Math.min(bounds.south, lat!)
            bounds.north = Math.max(bounds.north, lat!)
          }
    }
    if (bounds.east > bounds.west) return bounds
  }
  return null
}

export function makeBaseMap(layers: MapLayers | undefined, frame: MapFrame): BaseMap {
  const base: BaseMap = { outline: null, paths: [], labels: [] }
  for (const layer of layers?.layers ?? [])
    for (const feature of featuresOf(layer.geojson)) addFeature(base, layer.kind, feature, frame)
  const order = { outline: 0, relief: 1, area: 2, river: 3 }
  base.paths.sort((a, b) => order[a.kind] - order[b.kind] || a.rank - b.rank)
  return base
}

function addFeature(base: BaseMap, kind: MapLayers['layers'][number]['kind'], feature: Feature, frame: MapFrame): void {
  const name = String(feature.properties?.name ?? '')
  const numberIn = (key: string, otherwise: number) => {
    const value = Number(feature.properties?.[key])
    return Number.isFinite(value) ? value : otherwise
  }
  const geometry = feature.geometry
  if (kind === 'place') {
    if (geometry?.type !== 'Point') return
    const [lon, lat] = geometry.coordinates as Position
    const [x, y] = frame.project(lon!, lat!)
    base.labels.push({ kind, text: name, x, y, rank: numberIn('rank', 2) })
    return
  }
  const lines = linesOf(geometry)
  if (lines.length === 0) return
  const isLine = geometry?.type === 'LineString' || geometry?.type === 'MultiLineString'
  const path = new Path2D()
  let longest: [number, number][] = []
  for (const line of lines) {
    const points = line.map(([lon, lat]) => frame.project(lon!, lat!))
    drawLine(path, points)
    if (!isLine) path.closePath()
    if (points.length > longest.length) longest = points
  }
  const rank = kind === 'relief' ? numberIn('elevationM', 0) : numberIn('order', 1)
  base.paths.push({ kind, path, isLine, rank })
  if (kind === 'outline') base.outline = base.outline ?? path
  if (kind === 'area' && name) {
    const [x, y] = middleOf(longest)
    base.labels.push({ kind, text: name, x, y, rank: 9 })
  }
}

/** Centroid of a ring by area; the mean of its points where the area vanishes. */
export function middleOf(ring: readonly (readonly [number, number])[]): [number, number] {
  let area = 0
  let sumX = 0
  let sumY = 0
  for (let i = 0; i < ring.length; i += 1) {
    const [x0, y0] = ring[i]!
    const [x1, y1] = ring[(i + 1) % ring.length]!
    const cross = x0 * y1 - x1 * y0
    area += cross
    sumX += (x0 + x1) * cross
    sumY += (y0 + y1) * cross
  }
  if (Math.abs(area) > 1e-9) return [sumX / (3 * area), sumY / (3 * area)]
  const n = ring.length || 1
  return [ring.reduce((sum, [x]) => sum + x, 0) / n, ring.reduce((sum, [, y]) => sum + y, 0) / n]
}
