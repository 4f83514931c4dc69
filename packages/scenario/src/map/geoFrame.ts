/**
 * From the basin's plane (m, x east, y north) to degrees. The place is arbitrary: open ocean in middle latitudes, so
 * that no real ground is meant. One scale for all latitudes; over 130 km it departs from the sphere by less than 1 %.
 */
export type Position = [number, number]

const CENTRE_LAT_DEG = 44.2
const CENTRE_LON_DEG = -33.4
const M_PER_LAT_DEG = 111_132
const M_PER_LON_DEG = 111_320 * Math.cos((CENTRE_LAT_DEG * Math.PI) / 180)

/** [longitude, latitude] rounded to `decimals` places (4: about 10 m). */
export function positionDeg(xM: number, yM: number, decimals = 4): Position {
  const scale = 10 ** decimals
  return [
    Math.round((CENTRE_LON_DEG + xM / M_PER_LON_DEG) * scale) / scale,
    Math.round((CENTRE_LAT_DEG + yM / M_PER_LAT_DEG) * scale) / scale,
  ]
}
