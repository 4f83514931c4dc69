/** Predictive distributions given as evenly spaced quantiles, against clean readings. */
import type { DailyTable } from '@gaugewright/science'

/** One row per gauge-day; quantile k of row i at `quantilesMm[i * levelCount + k]`, level (k + 0.5) / levelCount. */
export interface ExpectationArrays {
  gauge: Int32Array
  day: Int32Array
  levelCount: number
  quantilesMm: Float32Array | Float64Array
}

/**
 * CRPS of a distribution known by its quantiles at levels (k + 0.5) / N: twice the mean quantile loss.
 * @param start  where the N quantiles begin in `quantilesMm`
 * @remarks Source: [GneitingRaftery2007] eq. 21 and the quantile form of [LaioTamea2007]; error O(1/N²) for smooth F.
 */
export function crpsFromQuantilesMm(
  quantilesMm: Float32Array | Float64Array,
  start: number,
  levelCount: number,
  observedMm: number,
): number {
  let sum = 0
  for (let k = 0; k < levelCount; k++) {
    const quantileMm = quantilesMm[start + k]!
    const level = (k + 0.5) / levelCount
    sum += quantileMm >= observedMm ? (1 - level) * (quantileMm - observedMm) : level * (observedMm - quantileMm)
  }
  return (2 * sum) / levelCount
}

/** Quantile at a level by straight lines between the given ones. */
export function quantileAtMm(
  quantilesMm: Float32Array | Float64Array,
  start: number,
  levelCount: number,
  level: number,
): number {
  const position = Math.min(levelCount - 1, Math.max(0, level * levelCount - 0.5))
  const below = Math.floor(position)
  const part = position - below
  const lower = quantilesMm[start + below]!
  return part === 0 ? lower : lower + part * (quantilesMm[start + below + 1]! - lower)
}

export interface ExpectationScores {
  count: number
  crpsMm: number
  /** CRPS per gauge-day in the order given, NaN where the clean table has no reading. */
  crpsEachMm: Float64Array
  /** Central 90 % interval where the median is at least 1 mm. */
  interval: { count: number; inside: number; below: number; above: number }
  meanAbsoluteErrorOfMedianMm: number
}

export function scoreExpectations(expectations: ExpectationArrays, clean: DailyTable): ExpectationScores {
  const { levelCount, quantilesMm } = expectations
  const crpsEachMm = new Float64Array(expectations.gauge.length).fill(Number.NaN)
  const interval = { count: 0, inside: 0, below: 0, above: 0 }
  let count = 0
  let crpsSum = 0
  let errorSum = 0
  for (let i = 0; i < crpsEachMm.length; i++) {
    const row = expectations.day[i]! - clean.firstDay
    if (row < 0 || row >= clean.dayCount) continue
    const observedMm = clean.amountMm[row * clean.gaugeCount + expectations.gauge[i]!]!
    const start = i * levelCount
    if (Number.isNaN(observedMm) || Number.isNaN(quantilesMm[start]!)) continue
    const crpsMm = crpsFromQuantilesMm(quantilesMm, start, levelCount, observedMm)
    crpsEachMm[i] = crpsMm
    crpsSum += crpsMm
    count++
    const medianMm = quantileAtMm(quantilesMm, start, levelCount, 0.5)
    errorSum += Math.abs(medianMm - observedMm)
    if (medianMm < 1) continue
    interval.count++
    if (observedMm < quantileAtMm(quantilesMm, start, levelCount, 0.05)) interval.below++
    else if (observedMm > quantileAtMm(quantilesMm, start, levelCount, 0.95)) interval.above++
    else interval.inside++
  }
  return {
    count,
    crpsMm: crpsSum / count,
    crpsEachMm,
    interval: {
      count: interval.count,
      inside: interval.inside / interval.count,
      below: interval.below / interval.count,
      above: interval.above / interval.count,
    },
    meanAbsoluteErrorOfMedianMm: errorSum / count,
  }
}
