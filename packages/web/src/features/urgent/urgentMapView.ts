/** The map of reports and storms on a plane of one unit a kilometre, y to the south. Pure. */
import type { MapLayers, UrgentItem, WireStorm } from '@gaugewright/contract'
import { type Projection, projectionFor, toPlane } from '@gaugewright/science'

export interface UrgentMap {
  box: { x: number; y: number; width: number; height: number }
  base: { kind: 'area' | 'river' | 'outline'; path: string }[]
  towns: { name: string; x: number; y: number }[]
  reports: { item: UrgentItem; x: number; y: number }[]
  storms: { id: string; line: string; cone: string | null; head: { x: number; y: number; towardDeg: number } | null }[]
}

type Position = [number, number]
interface Feature {
  properties: { name?: string; rank?: number } | null
  geometry: { type: string; coordinates: unknown } | null
}

/** How far ahead of its last report the range of a storm's direction is drawn, hours. */
const aheadHours = 0.5

export function urgentMapOf(
  items: readonly UrgentItem[],
  storms: readonly WireStorm[],
  layers: MapLayers['layers'],
): UrgentMap {
  const features = layers.flatMap(({ kind, geojson }) =>
    ((geojson as { features?: Feature[] })?.features ?? []).map((feature) => ({ kind, ...feature })),
  )
  const outline = features.filter(({ kind }) => kind === 'outline').flatMap(({ geometry }) => positionsOf(geometry))
  const around = [...items, ...outline.map(([lonDeg, latDeg]) => ({ latDeg, lonDeg }))]
  const projection = projectionFor(around)
  const at = (latDeg: number, lonDeg: number) => {
    const { xM, yM } = toPlane(projection, latDeg, lonDeg)
    return { x: xM / 1000, y: -yM / 1000 }
  }
  return {
    box: boxAround(around.map(({ latDeg, lonDeg }) => at(latDeg, lonDeg))),
    base: features.flatMap(({ kind, geometry }) =>
      kind === 'area' || kind === 'river' || kind === 'outline' ? [{ kind, path: pathOf(geometry, projection) }] : [],
    ),
    towns: features.flatMap(({ kind, geometry, properties }) => {
      if (kind !== 'place' || geometry?.type !== 'Point' || (properties?.rank ?? 1) > 1) return []
      const [lonDeg, latDeg] = geometry.coordinates as Position
      return [{ name: properties?.name ?? '', ...at(latDeg, lonDeg) }]
    }),
    // The weightiest is drawn last, on top.
    reports: [...items].reverse().map((item) => ({ item, ...at(item.latDeg, item.lonDeg) })),
    storms: storms.map((storm) => stormShape(storm, at)),
  }
}

function stormShape(
  { id, from, to, track }: WireStorm,
  at: (latDeg: number, lonDeg: number) => { x: number; y: number },
): UrgentMap['storms'][number] {
  const start = at(from.latDeg, from.lonDeg)
  const end = at(to.latDeg, to.lonDeg)
  const line = `M${round(start.x)} ${round(start.y)}L${round(end.x)} ${round(end.y)}`
  if (track === null) return { id, line, cone: null, head: null }
  const reachKm = Math.max(3, track.speedRangeKmPerH.high * aheadHours)
  const corner = (turnDeg: number): string => {
    const angle = ((track.towardDeg + turnDeg) * Math.PI) / 180
    return `${round(end.x + reachKm * Math.sin(angle))} ${round(end.y - reachKm * Math.cos(angle))}`
  }
  const half = Math.min(track.towardPlusMinusDeg, 85)
  const arc = `A${round(reachKm)} ${round(reachKm)} 0 0 1 ${corner(half)}`
  return {
    id,
    line,
    cone: `M${round(end.x)} ${round(end.y)}L${corner(-half)}${arc}Z`,
    head: { ...end, towardDeg: track.towardDeg },
  }
}

function boxAround(points: readonly { x: number; y: number }[]): UrgentMap['box'] {
  if (points.length === 0) return { x: -20, y: -20, width: 40, height: 40 }
  const xs = points.map(({ x }) => x)
  const ys = points.map(({ y }) => y)
  const [west, east, north, south] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const margin = Math.max(6, 0.06 * Math.max(east - west, south - north))
  return {
    x: west - margin,
    y: north - margin,
    width: Math.max(20, east - west + 2 * margin),
    height: Math.max(20, south - north + 2 * margin),
  }
}

function pathOf(geometry: Feature['geometry'], projection: Projection): string {
  return linesOf(geometry)
    .map((line) => {
      const points = line.map(([lonDeg, latDeg]) => {
        const { xM, yM } = toPlane(projection, latDeg, lonDeg)
        return `${round(xM / 1000)} ${round(-yM / 1000)}`
      })
      return `M${points.join('L')}`
    })
    .join('')
}

function positionsOf(geometry: Feature['geometry']): Position[] {
  return linesOf(geometry).flat()
}

function linesOf(geometry: Feature['geometry']): Position[][] {
  switch (geometry?.type) {
    case 'LineString':
      return [geometry.coordinates as Position[]]
    case 'MultiLineString':
    case 'Polygon':
      return geometry.coordinates as Position[][]
    case 'MultiPolygon':
      return (geometry.coordinates as Position[][][]).flat()
    default:
      return []
  }
}

function round(km: number): number {
  return Math.round(100 * km) / 100
}
