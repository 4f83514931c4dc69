/**
 * How likely one day's readings are under given field parameters: gauges taken one after another, each against what the
 * earlier ones say (a row of the Cholesky factor), cells taken in by matching moments on the way. Exact where all
 * readings are Gaussian; assumed-density filtering where some are cells. Source: [Minka2001] sec. 3.2.
 */
import { dot, factorRowInPlace } from '../krige/cholesky.ts'
import type { DayAmounts } from './fieldDay.ts'
import { type FieldParams, leastVariance, meanPriorVariance } from './fieldParams.ts'
import { matchMoments, type Site } from './matchMoments.ts'
import { type Scores, scoresInto } from './scores.ts'
import { covariancesInto, warpFor, warpInto } from './warp.ts'

/** Readings to be judged together, and the room to do it in. Gauges that are known best should come first. */
export interface LikelihoodBench {
  day: DayAmounts
  used: Int32Array
  xM: Float64Array
  yM: Float64Array
  scores: Scores
  p: Float64Array
  q: Float64Array
  z: Float64Array
  factor: Float64Array
}

export function openBench(
  day: DayAmounts,
  used: Int32Array,
  xM: ArrayLike<number>,
  yM: ArrayLike<number>,
): LikelihoodBench {
  const n = used.length
  return {
    day,
    used,
    xM: Float64Array.from(used, (g) => xM[g]!),
    yM: Float64Array.from(used, (g) => yM[g]!),
    scores: { low: new Float64Array(n), high: new Float64Array(n), variance: new Float64Array(n) },
    p: new Float64Array(n),
    q: new Float64Array(n),
    z: new Float64Array(n),
    factor: new Float64Array(n * n),
  }
}

const site: Site = { mean: 0, variance: 0, logShare: 0 }
const halfLogTwoPi = 0.9189385332046727

/** @returns log-likelihood of the amounts; -Infinity where the parameters make them impossible. Time O(n³ / 6). */
export function logLikelihood(bench: LikelihoodBench, params: FieldParams): number {
  const { day, used, scores, p, q, z, factor } = bench
  const n = used.length
  scoresInto(day, used, params.power, params.unitMm, params.sd, scores)
  warpInto(warpFor(params), bench.xM, bench.yM, p, q)
  const centre = params.meanCentre / params.sd
  const shared = 1 - params.nuggetShare
  const total = 1 + meanPriorVariance
  let sum = 0
  for (let i = 0; i < n; i++) {
    const row = i * n
    covariancesInto(params.kind, shared, p[i]!, q[i]!, p, q, i, factor, row)
    factorRowInPlace(factor, i, n, row)
    const variance = Math.max(leastVariance, total - dot(factor, row, factor, row, i))
    const mean = centre + dot(factor, row, z, 0, i)
    let score = scores.low[i]!
    let own = scores.variance[i]!
    if (Number.isNaN(own)) {
      matchMoments(mean, variance, scores.low[i]!, scores.high[i]!, site)
      sum += site.logShare
      score = site.mean
      own = site.variance
    } else {
      const spread = variance + own
      const off = score - mean
      sum -= halfLogTwoPi + 0.5 * (Math.log(spread) + (off * off) / spread)
      sum += logSlope(day, used[i]!, params)
    }
    const inverse = 1 / Math.sqrt(variance + own)
    factor[row + i] = inverse
    z[i] = (score - mean) * inverse
  }
  return Number.isNaN(sum) ? Number.NEGATIVE_INFINITY : sum
}

/** ln of d score / d amount times the gauge's step, so that Gaussian readings count like cells. */
function logSlope(day: DayAmounts, g: number, params: FieldParams): number {
  const unit = params.unitMm * (day.usual?.[g] ?? 1)
  const { power } = params
  return Math.log(power / (unit * params.sd)) + (power - 1) * Math.log(day.amountMm[g]! / unit)
}
