/**
 * Movement of a storm from its reports: a robust line (robustLine.ts) through their places over time, on a local plane.
 * The velocity is taken as bivariate Student t: centre the slope; scale² = s² / Σ w (t - t̄)²; s² the weighted residual
 * variance per coordinate, shrunk to the usual scatter of reports about a storm's centre, 5 km worth 4 degrees of freedom
 * (common practice); degrees of freedom 4 + 2 (effective reports) - 4. Speed and direction are read off evenly spread
 * points of that distribution, whose radius has the closed form P(R > r) = (1 + r²/ν)^(-ν/2) [Kotz2004]. Nothing is drawn
 * at random. Where the direction cannot be told there is no track.
 */
import { fromPlane, projectionFor, toPlane } from '../space/projection.ts'
import { quantileOfSorted } from '../stats/quantile.ts'
import type { PlacedReport } from './clusterReports.ts'
import { robustLine } from './robustLine.ts'

export interface StormTrack {
  speedKmPerH: number
  /** P10 and P90. */
  speedLowKmPerH: number
  speedHighKmPerH: number
  /** Toward which it moves, degrees clockwise from north. */
  towardDeg: number
  /** Half width of the 80 % interval of the direction. */
  towardPlusMinusDeg: number
  /** On the track at the first and at the last report. */
  from: { latDeg: number; lonDeg: number }
  to: { latDeg: number; lonDeg: number }
}

const scatterKm = 5
const scatterFreedom = 4
const fewestReports = 3
/** Shorter stretches of time tell of no movement. */
const leastMinutes = 5
/** A direction less sure than this is not told. */
const mostPlusMinusDeg = 60
const points = 512

/** @returns null where too few reports, too short a time or too wide a scatter tell of no movement */
export function stormTrack(reports: readonly PlacedReport[]): StormTrack | null {
  if (reports.length < fewestReports) return null
  const firstMs = Math.min(...reports.map(({ seenAtMs }) => seenAtMs))
  const hours = Float64Array.from(reports, ({ seenAtMs }) => (seenAtMs - firstMs) / 3_600_000)
  const lastHours = Math.max(...hours)
  if (lastHours * 60 < leastMinutes) return null
  const projection = projectionFor(reports)
  const places = reports.map(({ latDeg, lonDeg }) => toPlane(projection, latDeg, lonDeg))
  const eastKm = Float64Array.from(places, ({ xM }) => xM / 1000)
  const northKm = Float64Array.from(places, ({ yM }) => yM / 1000)
  const line = robustLine(hours, [eastKm, northKm], scatterKm / 2)
  const { freedom, scaleKmPerH } = spreadOf(hours, eastKm, northKm, line)
  const [east = 0, north = 0] = line.slope
  const towardDeg = (Math.atan2(east, north) * 180) / Math.PI
  const speeds = new Float64Array(points)
  const turns = new Float64Array(points)
  for (let index = 0; index < points; index++) {
    const above = 1 - (index + 0.5) / points
    const radius = scaleKmPerH * Math.sqrt(freedom * (above ** (-2 / freedom) - 1))
    // The golden angle spreads the points evenly over all directions.
    const angle = index * Math.PI * (3 - Math.sqrt(5))
    const [u, v] = [east + radius * Math.cos(angle), north + radius * Math.sin(angle)]
    speeds[index] = Math.hypot(u, v)
    turns[index] = Math.abs(turnDeg((Math.atan2(u, v) * 180) / Math.PI - towardDeg))
  }
  speeds.sort()
  turns.sort()
  const towardPlusMinusDeg = quantileOfSorted(turns, 0.8)
  if (towardPlusMinusDeg > mostPlusMinusDeg) return null
  const placeAt = (hour: number) =>
    fromPlane(
      projection,
      1000 * ((line.start[0] as number) + east * hour),
      1000 * ((line.start[1] as number) + north * hour),
    )
  return {
    speedKmPerH: Math.hypot(east, north),
    speedLowKmPerH: quantileOfSorted(speeds, 0.1),
    speedHighKmPerH: quantileOfSorted(speeds, 0.9),
    towardDeg: (towardDeg + 360) % 360,
    towardPlusMinusDeg,
    from: placeAt(0),
    to: placeAt(lastHours),
  }
}

function spreadOf(
  hours: Float64Array,
  eastKm: Float64Array,
  northKm: Float64Array,
  { start, slope, weights }: ReturnType<typeof robustLine>,
): { freedom: number; scaleKmPerH: number } {
  let weightSum = 0
  let hourSum = 0
  for (const [index, weight] of weights.entries()) {
    weightSum += weight
    hourSum += weight * (hours[index] as number)
  }
  const meanHour = hourSum / weightSum
  let timeSpread = 0
  let squares = 0
  for (const [index, weight] of weights.entries()) {
    const hour = hours[index] as number
    const eastOff = (eastKm[index] as number) - (start[0] as number) - (slope[0] as number) * hour
    const northOff = (northKm[index] as number) - (start[1] as number) - (slope[1] as number) * hour
    timeSpread += weight * (hour - meanHour) ** 2
    squares += weight * (eastOff ** 2 + northOff ** 2)
  }
  const own = Math.max(0, 2 * weightSum - 4)
  const freedom = scatterFreedom + own
  const variance = (scatterFreedom * scatterKm ** 2 + squares) / freedom
  return { freedom, scaleKmPerH: Math.sqrt(variance / timeSpread) }
}

/** Between -180 and 180. */
function turnDeg(degrees: number): number {
  return ((((degrees + 180) % 360) + 360) % 360) - 180
}
