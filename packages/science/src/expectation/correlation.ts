/**
 * How alike two reports are: correlation of normal scores by distance, by how well each gauge fits its surroundings,
 * and by how far the two days they stand for overlap. Learning is in learnCorrelation.ts.
 *
 *   corr(i on day t, j on day s) = fit_i · fit_j · ρ(distance) · c(|t + offset_i - s - offset_j|)
 *
 * ρ is a sum of two exponentials and a plateau (Matérn ν = 1/2 twice, and the day's mean), c a triangle (the shared part
 * of two windows of one day) with a little persistence: products of valid correlations, hence valid.
 */
import type { GaugeSet } from '../network/gaugeSet.ts'

export interface Correlation {
  shortShare: number
  shortRangeM: number
  longShare: number
  longRangeM: number
  plateau: number
  /** Correlation left at one day's distance. */
  persistence: number
  /** Factor on the correlations of a gauge; 1 is usual, lower for one that fits its surroundings worse. */
  fit: Float64Array
  /** Days by which a gauge's dates run ahead of the network's, in eighths: +1 when it dates rain a day early. */
  offsetDays: Float64Array
  /** What the common history of pairs says, blended with the formula by its length. */
  pairs: PairCorrelations
}

/** Correlations of pairs of gauges (i < j) at lags of -2 … 2 days (of j against i); NaN where too few days are common. */
export interface PairCorrelations {
  i: Int32Array
  j: Int32Array
  /** Index pair * 5 + lag + 2. */
  byLag: Float32Array
}

export const pairLags = 2

export function noPairs(): PairCorrelations {
  return { i: new Int32Array(0), j: new Int32Array(0), byLag: new Float32Array(0) }
}

export function correlationByDistance(c: Correlation, distanceM: number): number {
  return (
    c.shortShare * Math.exp(-distanceM / c.shortRangeM) + c.longShare * Math.exp(-distanceM / c.longRangeM) + c.plateau
  )
}

export function correlationByShift(c: Correlation, shiftDays: number): number {
  const apart = Math.abs(shiftDays)
  const lasting = Math.min(0.9, c.persistence * Math.E)
  return (1 - lasting) * Math.max(0, 1 - apart) + lasting * Math.exp(-apart)
}

/** Correlation of gauge i's report on a day with gauge j's `lagDays` later. */
export function correlationOf(c: Correlation, gauges: GaugeSet, i: number, j: number, lagDays: number): number {
  const dx = gauges.xM[i]! - gauges.xM[j]!
  const dy = gauges.yM[i]! - gauges.yM[j]!
  const shift = c.offsetDays[i]! - c.offsetDays[j]! - lagDays
  return c.fit[i]! * c.fit[j]! * correlationByDistance(c, Math.sqrt(dx * dx + dy * dy)) * correlationByShift(c, shift)
}
