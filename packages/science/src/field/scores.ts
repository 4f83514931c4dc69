/**
 * What each gauge's reading says of its latent score, in standard deviations of the scores: known to a small cell
 * (a Gaussian), known to a wide cell (small amounts, traces), or known to lie below the dry threshold.
 */
import { type DayAmounts, isDry, resolutionAt } from './fieldDay.ts'
import type { FieldParams } from './fieldParams.ts'

/** Cells wider than this many standard deviations are kept as cells, narrower ones become a Gaussian. */
const wideCell = 0.15

export interface Scores {
  /** Ends of the cell; low is -Infinity for a dry gauge. For a Gaussian both are the score itself. */
  low: Float64Array
  high: Float64Array
  /** Variance of a Gaussian's rounding; NaN for a cell. */
  variance: Float64Array
}

/** @param used  indices of the gauges with a reading; scores are in their order */
export function scoresOf(day: DayAmounts, used: Int32Array, params: FieldParams): Scores {
  const n = used.length
  const out: Scores = { low: new Float64Array(n), high: new Float64Array(n), variance: new Float64Array(n) }
  scoresInto(day, used, params.power, params.unitMm, params.sd, out)
  return out
}

export function scoresInto(
  day: DayAmounts,
  used: Int32Array,
  power: number,
  unitMm: number,
  sd: number,
  out: Scores,
): void {
  for (let k = 0; k < used.length; k++) {
    const g = used[k]!
    const unit = unitMm * (day.usual?.[g] ?? 1)
    const half = 0.5 * resolutionAt(day, g)
    const threshold = (half / unit) ** power / sd
    if (isDry(day, g)) {
      out.low[k] = Number.NEGATIVE_INFINITY
      out.high[k] = threshold
      out.variance[k] = Number.NaN
      continue
    }
    if (day.isTrace?.[g] === 1) {
      // Just above dry: up to as much again as the dry half step.
      out.low[k] = threshold
      out.high[k] = half > 0 ? ((1.5 * half) / unit) ** power / sd : 1e-6
      out.variance[k] = Number.NaN
      continue
    }
    const amountMm = day.amountMm[g]!
    const low = (Math.max(half, amountMm - half) / unit) ** power / sd
    const high = ((amountMm + half) / unit) ** power / sd
    if (high - low > wideCell) {
      out.low[k] = low
      out.high[k] = high
      out.variance[k] = Number.NaN
    } else {
      const score = (amountMm / unit) ** power / sd
      out.low[k] = score
      out.high[k] = score
      out.variance[k] = ((high - low) * (high - low)) / 12
    }
  }
}

/** Score of the dry threshold at a place, in standard deviations. */
export function dryScore(params: FieldParams, halfStepMm: number, usual: number): number {
  return (halfStepMm / (params.unitMm * usual)) ** params.power / params.sd
}
