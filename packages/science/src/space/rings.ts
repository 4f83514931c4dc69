/**
 * Areas on the plane as rings of points, in the manner of GeoJSON: one or more polygons, each an outer ring and holes.
 * A point is inside where a ray from it crosses an odd number of edges, so the sense of the rings does not matter.
 */

/** Corners x, y in turn: [x0, y0, x1, y1, …]; closing corner optional. */
export type Ring = Float64Array

/** All rings of an area, holes and parts alike. */
export type AreaRings = readonly Ring[]

export interface Bounds {
  west: number
  south: number
  east: number
  north: number
}

/** Polygon or MultiPolygon coordinates of GeoJSON to rings; `place` turns each position into x, y of the plane. */
export function ringsFromGeoJson(
  geometry: { type: string; coordinates: unknown },
  place: (lonDeg: number, latDeg: number) => { xM: number; yM: number },
): Ring[] {
  type Positions = [number, number][]
  const polygons =
    geometry.type === 'MultiPolygon'
      ? (geometry.coordinates as Positions[][])
      : geometry.type === 'Polygon'
        ? [geometry.coordinates as Positions[]]
        : []
  const rings: Ring[] = []
  for (const polygon of polygons) {
    for (const positions of polygon) {
      const ring = new Float64Array(2 * positions.length)
      positions.forEach(([lonDeg, latDeg], k) => {
        const at = place(lonDeg, latDeg)
        ring[2 * k] = at.xM
        ring[2 * k + 1] = at.yM
      })
      rings.push(ring)
    }
  }
  return rings
}

export function isInside(rings: AreaRings, x: number, y: number): boolean {
  let inside = false
  for (const ring of rings) {
    const n = ring.length
    for (let i = 0, j = n - 2; i < n; j = i, i += 2) {
      const yi = ring[i + 1]!
      const yj = ring[j + 1]!
      if (yi > y !== yj > y && x < ring[i]! + ((y - yi) / (yj - yi)) * (ring[j]! - ring[i]!)) inside = !inside
    }
  }
  return inside
}

export function boundsOf(rings: AreaRings): Bounds {
  const bounds = {
    west: Number.POSITIVE_INFINITY,
    south: Number.POSITIVE_INFINITY,
    east: Number.NEGATIVE_INFINITY,
    north: Number.NEGATIVE_INFINITY,
  }
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      bounds.west = Math.min(bounds.west, ring[i]!)
      bounds.east = Math.max(bounds.east, ring[i]!)
      bounds.south = Math.min(bounds.south, ring[i + 1]!)
      bounds.north = Math.max(bounds.north, ring[i + 1]!)
    }
  }
  return bounds
}

/**
 * Points spread evenly over an area, each standing for an equal part of it: a square lattice, finer until there are at
 * least `least` of them; the corner mean where even a fine lattice misses a sliver.
 * @returns x, y in turn
 */
export function pointsInside(rings: AreaRings, least: number): Float64Array {
  const { west, south, east, north } = boundsOf(rings)
  const width = east - west
  const height = north - south
  if (!(width > 0 && height > 0)) return cornerMean(rings)
  let step = Math.sqrt((width * height) / Math.max(1, least))
  for (let turn = 0; turn < 12; turn++, step *= 0.8) {
    const columns = Math.max(1, Math.round(width / step))
    const rows = Math.max(1, Math.round(height / step))
    if (columns * rows > 40 * least + 400) break
    const points: number[] = []
    for (let r = 0; r < rows; r++) {
      const y = south + ((r + 0.5) * height) / rows
      for (let c = 0; c < columns; c++) {
        const x = west + ((c + 0.5) * width) / columns
        if (isInside(rings, x, y)) points.push(x, y)
      }
    }
    if (points.length >= 2 * least) return Float64Array.from(points)
  }
  return cornerMean(rings)
}

function cornerMean(rings: AreaRings): Float64Array {
  let x = 0
  let y = 0
  let n = 0
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      x += ring[i]!
      y += ring[i + 1]!
      n++
    }
  }
  return Float64Array.of(x / n, y / n)
}
