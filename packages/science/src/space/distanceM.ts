/** Great-circle distance and bearing on a sphere of the earth's mean radius. Source: haversine form, [Sinnott1984]. */

/** Mean radius (2a + b) / 3 of the GRS 80 ellipsoid, m. Source: [Moritz2000]. */
export const earthRadiusM = 6371008.7714

const radPerDeg = Math.PI / 180

/** Distance in m between two places given in degrees. */
export function distanceM(fromLatDeg: number, fromLonDeg: number, toLatDeg: number, toLonDeg: number): number {
  const sinLat = Math.sin(0.5 * (toLatDeg - fromLatDeg) * radPerDeg)
  const sinLon = Math.sin(0.5 * (toLonDeg - fromLonDeg) * radPerDeg)
  const h = sinLat * sinLat + Math.cos(fromLatDeg * radPerDeg) * Math.cos(toLatDeg * radPerDeg) * sinLon * sinLon
  return 2 * earthRadiusM * Math.asin(Math.min(1, Math.sqrt(h)))
}

/** Direction in which the second place is seen from the first, degrees clockwise from north, 0 <= bearing < 360. */
export function bearingDeg(fromLatDeg: number, fromLonDeg: number, toLatDeg: number, toLonDeg: number): number {
  const from = fromLatDeg * radPerDeg
  const to = toLatDeg * radPerDeg
  const apart = (toLonDeg - fromLonDeg) * radPerDeg
  const east = Math.sin(apart) * Math.cos(to)
  const north = Math.cos(from) * Math.sin(to) - Math.sin(from) * Math.cos(to) * Math.cos(apart)
  const degrees = Math.atan2(east, north) / radPerDeg
  return (degrees + 360) % 360
}
