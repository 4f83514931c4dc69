/**
 * What is usual at each gauge at each time of year: a mixed distribution with a chance of a dry day and a distribution
 * of wet amounts. The shape of the wet amounts is pooled over the network by month; each gauge has its own chance of a
 * dry day and its own scale. Learning is in learnClimate.ts, the transform to normal scores in scores.ts.
 */
import type { Rounding } from './rounding.ts'

export interface Climate {
  gaugeCount: number
  /** Smallest step each gauge resolves, mm; Float64Array(gaugeCount). */
  resolutionMm: Float64Array
  rounding: Rounding
  /** Chance that a gauge resolves nothing on a day of the month; index gauge * 12 + month. */
  dryShare: Float64Array
  /** Factor from pooled to local wet amounts; index gauge * 12 + month. */
  scaleMm: Float64Array
  /**
   * Pooled wet amounts: normal score of the share of wet amounts below exp(wetGrid…) × scale, by month, on the even
   * grid of `wetGrid`; index month * wetGrid.count + k. Increasing in k.
   */
  wetScore: Float64Array
}

/** Even grid of the natural logarithm of amount / scale on which the pooled wet distribution is held. */
export const wetGrid = { from: -6, step: 0.125, count: 89 } as const

/** Month (0 to 11) of an epoch day; civil calendar, no clock. Source: Hinnant's days-to-civil algorithm (from memory). */
export function monthOfEpochDay(day: number): number {
  const z = Math.floor(day) + 719468
  const dayOfEra = z - Math.floor(z / 146097) * 146097
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const shifted = Math.floor((5 * dayOfYear + 2) / 153)
  return shifted < 10 ? shifted + 2 : shifted - 10
}
