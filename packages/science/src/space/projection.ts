/**
 * Degrees to metres on a local plane and back: the azimuthal equidistant projection of a sphere of the earth's mean
 * radius. Distances from the centre are exact; across it, at angular distance c from the centre, they are stretched by
 * at most c / sin c: 0.03 % at 250 km, 0.1 % at 500 km, 0.4 % at 1000 km. x grows to the east, y to the north.
 *
 *   cos c = sin φ0 sin φ + cos φ0 cos φ cos(λ - λ0),  k = R c / sin c
 *   x = k cos φ sin(λ - λ0),  y = k (cos φ0 sin φ - sin φ0 cos φ cos(λ - λ0))
 *
 * Source: [Snyder1987] 22-4, 22-5, 25-2 to 25-4 and 20-14 to 20-16.
 */
import { earthRadiusM } from './distanceM.ts'

export interface Projection {
  centreLatDeg: number
  centreLonDeg: number
}

export interface PlanePoint {
  xM: number
  yM: number
}

export interface GeoPoint {
  latDeg: number
  lonDeg: number
}

const radPerDeg = Math.PI / 180

/** A projection centred on a set of places, wherever they lie, across the 180th meridian too; (0, 0) for none. */
export function projectionFor(places: readonly GeoPoint[]): Projection {
  let x = 0
  let y = 0
  let z = 0
  for (const place of places) {
    const lat = place.latDeg * radPerDeg
    const lon = place.lonDeg * radPerDeg
    x += Math.cos(lat) * Math.cos(lon)
    y += Math.cos(lat) * Math.sin(lon)
    z += Math.sin(lat)
  }
  return {
    centreLatDeg: Math.atan2(z, Math.hypot(x, y)) / radPerDeg,
    centreLonDeg: Math.atan2(y, x) / radPerDeg,
  }
}

export function toPlane(projection: Projection, latDeg: number, lonDeg: number): PlanePoint {
  const centre = projection.centreLatDeg * radPerDeg
  const lat = latDeg * radPerDeg
  const apart = (lonDeg - projection.centreLonDeg) * radPerDeg
  const cosLat = Math.cos(lat)
  const east = cosLat * Math.sin(apart)
  // sin φ and cos φ cos Δλ are taken apart so that near the centre no digits are lost.
  const halfSin = Math.sin(0.5 * apart)
  const north = Math.sin(lat - centre) + 2 * Math.sin(centre) * cosLat * halfSin * halfSin
  const sinC = Math.hypot(east, north)
  const cosC = Math.cos(lat - centre) - 2 * Math.cos(centre) * cosLat * halfSin * halfSin
  const k = earthRadiusM * (sinC < 1e-12 ? 1 : Math.atan2(sinC, cosC) / sinC)
  return { xM: k * east, yM: k * north }
}

export function fromPlane(projection: Projection, xM: number, yM: number): GeoPoint {
  const away = Math.hypot(xM, yM)
  if (away === 0) return { latDeg: projection.centreLatDeg, lonDeg: projection.centreLonDeg }
  const centre = projection.centreLatDeg * radPerDeg
  const c = away / earthRadiusM
  const sinC = Math.sin(c)
  const cosC = Math.cos(c)
  const lat = Math.asin(Math.max(-1, Math.min(1, cosC * Math.sin(centre) + (yM * sinC * Math.cos(centre)) / away)))
  const lon = Math.atan2(xM * sinC, away * Math.cos(centre) * cosC - yM * Math.sin(centre) * sinC)
  const lonDeg = projection.centreLonDeg + lon / radPerDeg
  return { latDeg: lat / radPerDeg, lonDeg: lonDeg > 180 ? lonDeg - 360 : lonDeg <= -180 ? lonDeg + 360 : lonDeg }
}
