/** What the common history of pairs of gauges says of their correlation, at lags of a few days. */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { uncensorCorrelation } from './censoredCorrelation.ts'
import { type Correlation, correlationOf, type PairCorrelations, pairLags } from './correlation.ts'
import type { GaugePair } from './nearPairs.ts'

/** Common days below which nothing is learned of a pair. */
export const enoughDays = 60
const maxLag = pairLags

export interface PairSeen extends GaugePair {
  days: number
  /** Full correlation with the second gauge's report 2 days earlier … 2 days later; index lag + 2. */
  byLag: Float64Array
}

export function seePairs(
  pairs: GaugePair[],
  score: Float32Array,
  meanThreshold: Float64Array,
  n: number,
  dayCount: number,
): PairSeen[] {
  const seen: PairSeen[] = []
  for (const pair of pairs) {
    const { i, j } = pair
    const byLag = new Float64Array(2 * maxLag + 1)
    let days = 0
    for (let lag = -maxLag; lag <= maxLag; lag++) {
      let xy = 0
      let xx = 0
      let yy = 0
      let count = 0
      for (let d = Math.max(0, -lag); d < Math.min(dayCount, dayCount - lag); d++) {
        const x = score[d * n + i]!
        const y = score[(d + lag) * n + j]!
        const product = x * y
        if (Number.isNaN(product)) continue
        xy += product
        xx += x * x
        yy += y * y
        count++
      }
      if (lag === 0) days = count
      byLag[lag + maxLag] =
        count < enoughDays
          ? Number.NaN
          : uncensorCorrelation(xy / Math.sqrt(xx * yy), (meanThreshold[i]! + meanThreshold[j]!) / 2)
    }
    if (days >= enoughDays) seen.push({ ...pair, days, byLag })
  }
  return seen
}

/** Common days at which a pair's own history counts as much as the formula. */
const pairShrinkDays = 350
const mostPairCorrelation = 0.985

export function blendPairs(gauges: GaugeSet, correlation: Correlation, pairs: PairSeen[]): PairCorrelations {
  const lags = 2 * maxLag + 1
  const out: PairCorrelations = {
    i: new Int32Array(pairs.length),
    j: new Int32Array(pairs.length),
    byLag: new Float32Array(pairs.length * lags).fill(Number.NaN),
  }
  pairs.forEach((pair, p) => {
    out.i[p] = pair.i
    out.j[p] = pair.j
    const own = pair.days / (pair.days + pairShrinkDays)
    for (let lag = -maxLag; lag <= maxLag; lag++) {
      const seen = pair.byLag[lag + maxLag]!
      if (Number.isNaN(seen)) continue
      const formula = correlationOf(correlation, gauges, pair.i, pair.j, lag)
      out.byLag[p * lags + lag + maxLag] = Math.min(mostPairCorrelation, own * seen + (1 - own) * formula)
    }
  })
  return out
}
