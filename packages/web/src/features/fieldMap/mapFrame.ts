/** Pure geometry of the map: one projection for a network, and the pan and zoom that bring it to the screen. */
import { geoMercator } from 'd3-geo'

export type Bounds = { west: number; south: number; east: number; north: number }
/** Screen = world × scale + offset, in CSS pixels. */
export type View = { scale: number; xPx: number; yPx: number }
export type Size = { widthPx: number; heightPx: number }

export type MapFrame = {
  bounds: Bounds
  worldWidth: number
  worldHeight: number
  /** World coordinates (0…1000 across) of a longitude and latitude in degrees. */
  project: (lonDeg: number, latDeg: number) => [number, number]
  latOfWorldY: (y: number) => number
}

/** Bounds of points, with a margin; a single place gets a square of about 20 km. */
export function boundsOf(points: readonly { lonDeg: number; latDeg: number }[]): Bounds {
  const lons = points.map((p) => p.lonDeg)
  const lats = points.map((p) => p.latDeg)
  const least = (values: number[]) => values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
  const most = (values: number[]) => values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)
  if (points.length === 0) return { west: -1, south: -1, east: 1, north: 1 }
  const pad = Math.max(0.1, (most(lons) - least(lons)) * 0.04)
  return { west: least(lons) - pad, south: least(lats) - pad, east: most(lons) + pad, north: most(lats) + pad }
}

export function makeFrame(bounds: Bounds): MapFrame {
  const corners = {
    type: 'MultiPoint' as const,
    coordinates: [
      [bounds.west, bounds.south],
      [bounds.east, bounds.north],
    ],
  }
  const projection = geoMercator().fitWidth(1000, corners)
  const project = (lonDeg: number, latDeg: number) => projection([lonDeg, latDeg]) as [number, number]
  const [left, top] = project(bounds.west, bounds.north)
  const [right, bottom] = project(bounds.east, bounds.south)
  return {
    bounds,
    worldWidth: right - left,
    worldHeight: bottom - top,
    project: (lonDeg, latDeg) => {
      const [x, y] = project(lonDeg, latDeg)
      return [x - left, y - top]
    },
    latOfWorldY: (y) => projection.invert!([left, y + top])![1],
  }
}

/** The view that shows the whole frame, centred. */
export function fitView(frame: Pick<MapFrame, 'worldWidth' | 'worldHeight'>, size: Size, padPx = 14): View {
  const scale = Math.min((size.widthPx - 2 * padPx) / frame.worldWidth, (size.heightPx - 2 * padPx) / frame.worldHeight)
  const safe = Number.isFinite(scale) && scale > 0 ? scale : 0.1
  return {
    scale: safe,
    xPx: (size.widthPx - frame.worldWidth * safe) / 2,
    yPx: (size.heightPx - frame.worldHeight * safe) / 2,
  }
}

/** Zoom by a factor about a screen point, between 0.7 and 40 times the fitted scale. */
export function zoomAbout(view: View, factor: number, xPx: number, yPx: number, fitted: View): View {
  const scale = Math.min(fitted.scale * 40, Math.max(fitted.scale * 0.7, view.scale * factor))
  const by = scale / view.scale
  return { scale, xPx: xPx - (xPx - view.xPx) * by, yPx: yPx - (yPx - view.yPx) * by }
}

/** Keep at least a fifth of the screen covered by the map, so that it cannot be lost. */
export function keepInSight(view: View, frame: Pick<MapFrame, 'worldWidth' | 'worldHeight'>, size: Size): View {
  const clamp = (at: number, lengthPx: number, roomPx: number) =>
    Math.min(roomPx * 0.8, Math.max(roomPx * 0.2 - lengthPx, at))
  return {
    scale: view.scale,
    xPx: clamp(view.xPx, frame.worldWidth * view.scale, size.widthPx),
    yPx: clamp(view.yPx, frame.worldHeight * view.scale, size.heightPx),
  }
}

/** Index of the point nearest to a screen position within `reachPx`, or -1. World points: x0, y0, x1, y1, … */
export function nearestPoint(world: Float64Array, view: View, xPx: number, yPx: number, reachPx: number): number {
  let best = -1
  let bestSquared = reachPx * reachPx
  for (let i = 0; i < world.length; i += 2) {
    const dx = world[i]! * view.scale + view.xPx - xPx
    const dy = world[i + 1]! * view.scale + view.yPx - yPx
    const squared = dx * dx + dy * dy
    if (squared <= bestSquared) {
      bestSquared = squared
      best = i / 2
    }
  }
  return best
}

/** The next point in a direction (unit vector on the screen) from one: near and not far off the line; -1 when none. */
export function nextPointToward(world: Float64Array, from: number, dx: number, dy: number): number {
  let best = -1
  let bestCost = Number.POSITIVE_INFINITY
  for (let i = 0; i < world.length; i += 2) {
    if (i / 2 === from) continue
    const x = world[i]! - world[from * 2]!
    const y = world[i + 1]! - world[from * 2 + 1]!
    const ahead = x * dx + y * dy
    const aside = Math.abs(x * dy - y * dx)
    if (ahead <= 0 || aside > ahead * 1.2) continue
    const cost = ahead + 2 * aside
    if (cost < bestCost) {
      bestCost = cost
      best = i / 2
    }
  }
  return best
}
