/**
 * Fit nugget, partial sill and range to an empirical variogram by weighted least squares. The default weights,
 * pairs / lag², are the usual ones of practice; pairs / model² is Cressie's. Sources: [Cressie1985], [Pebesma2004].
 * For a range the two variances follow from a small linear problem, so the search runs over the range alone.
 */
import { ScienceError } from '../error.ts'
import type { EmpiricalVariogram } from './empirical.ts'
import { shareOfSill, type Variogram, type VariogramKind } from './variogram.ts'

export interface FitVariogramAsk {
  kind: VariogramKind
  weights?: 'pairsByLag' | 'pairsByModel'
  /** Hold the nugget at 0. */
  noNugget?: boolean
}

/** @throws {ScienceError} TOO_FEW_POINTS with fewer than 3 classes of distance */
export function fitVariogram(empirical: EmpiricalVariogram, ask: FitVariogramAsk): Variogram {
  const n = empirical.lagM.length
  if (n < 3) throw new ScienceError('TOO_FEW_POINTS', `fitVariogram needs 3 classes of distance and got ${n}`)
  const weights = Float64Array.from(empirical.pairs, (pairs, k) => pairs / empirical.lagM[k]! ** 2)
  let best = searchRange(empirical, weights, ask)
  if (ask.weights === 'pairsByModel') {
    for (let turn = 0; turn < 30; turn++) {
      for (let k = 0; k < n; k++) {
        const model = best.nuggetMm2 + best.partialSillMm2 * shareOfSill(best, empirical.lagM[k]!, 0)
        weights[k] = empirical.pairs[k]! / Math.max(1e-12, model * model)
      }
      const next = searchRange(empirical, weights, ask)
      const settled = Math.abs(next.practicalRangeM / best.practicalRangeM - 1) < 1e-7
      best = next
      if (settled) break
    }
  }
  return best
}

function searchRange(empirical: EmpiricalVariogram, weights: Float64Array, ask: FitVariogramAsk): Variogram {
  const longest = empirical.lagM[empirical.lagM.length - 1]!
  const lossAt = (logRange: number): number => fitSills(empirical, weights, ask, Math.exp(logRange)).loss
  const from = Math.log(0.5 * empirical.lagM[0]!)
  const to = Math.log(4 * longest)
  const steps = 60
  let at = from
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k <= steps; k++) {
    const logRange = from + ((to - from) * k) / steps
    const loss = lossAt(logRange)
    if (loss < least) {
      least = loss
      at = logRange
    }
  }
  // Golden section inside the best two steps.
  const golden = 0.6180339887498949
  let low = at - (to - from) / steps
  let high = at + (to - from) / steps
  let left = high - golden * (high - low)
  let right = low + golden * (high - low)
  let lossLeft = lossAt(left)
  let lossRight = lossAt(right)
  while (high - low > 1e-9) {
    if (lossLeft < lossRight) {
      high = right
      right = left
      lossRight = lossLeft
      left = high - golden * (high - low)
      lossLeft = lossAt(left)
    } else {
      low = left
      left = right
      lossLeft = lossRight
      right = low + golden * (high - low)
      lossRight = lossAt(right)
    }
  }
  return fitSills(empirical, weights, ask, Math.exp(0.5 * (low + high))).variogram
}

/** Best nugget and partial sill, neither below 0, for one range. */
function fitSills(
  empirical: EmpiricalVariogram,
  weights: Float64Array,
  ask: FitVariogramAsk,
  practicalRangeM: number,
): { variogram: Variogram; loss: number } {
  const shape: Variogram = { kind: ask.kind, nuggetMm2: 0, partialSillMm2: 1, practicalRangeM }
  let w = 0
  let ws = 0
  let wss = 0
  let wg = 0
  let wsg = 0
  let wgg = 0
  for (let k = 0; k < weights.length; k++) {
    const share = shareOfSill(shape, empirical.lagM[k]!, 0)
    const seen = empirical.semivarianceMm2[k]!
    w += weights[k]!
    ws += weights[k]! * share
    wss += weights[k]! * share * share
    wg += weights[k]! * seen
    wsg += weights[k]! * share * seen
    wgg += weights[k]! * seen * seen
  }
  const determinant = w * wss - ws * ws
  let nuggetMm2 = determinant > 1e-14 * w * wss ? (wg * wss - wsg * ws) / determinant : 0
  let partialSillMm2 = wss > 0 ? (wsg - nuggetMm2 * ws) / wss : 0
  if (ask.noNugget || nuggetMm2 < 0) {
    nuggetMm2 = 0
    partialSillMm2 = wss > 0 ? wsg / wss : 0
  } else if (partialSillMm2 < 0) {
    nuggetMm2 = wg / w
    partialSillMm2 = 0
  }
  const loss =
    wgg -
    2 * (nuggetMm2 * wg + partialSillMm2 * wsg) +
    nuggetMm2 * nuggetMm2 * w +
    2 * nuggetMm2 * partialSillMm2 * ws +
    partialSillMm2 * partialSillMm2 * wss
  return { variogram: { ...shape, nuggetMm2, partialSillMm2 }, loss }
}
