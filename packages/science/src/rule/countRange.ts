/**
 * The likely range of a count that is known by its mean and variance: negative binomial where it scatters more than
 * chance alone (variance above the mean), Poisson otherwise, normal where it is large. Common practice.
 */
import { ScienceError } from '../error.ts'
import { normalQuantile } from '../stats/normalQuantile.ts'
import { countQuantile } from './poissonBinomial.ts'

/** Above this mean the normal distribution is near enough, and the recursion would underflow. */
const LARGE_MEAN = 300

export interface CountRange {
  low: number
  high: number
}

/**
 * @param mean      of the count, >= 0
 * @param variance  of the count, >= 0
 * @param share     that lies within, the same left out on either side: 0.8 for P10 to P90
 * @returns whole numbers
 * @throws {ScienceError} OUT_OF_DOMAIN where mean or variance is negative or NaN
 */
export function countRange(mean: number, variance: number, share = 0.8): CountRange {
  if (!(mean >= 0 && variance >= 0)) {
    throw new ScienceError('OUT_OF_DOMAIN', `a count with mean ${mean} and variance ${variance}`)
  }
  const [low, high] = [(1 - share) / 2, (1 + share) / 2]
  if (mean === 0) return { low: 0, high: 0 }
  const spread = Math.max(mean, variance)
  if (mean > LARGE_MEAN) {
    const at = (level: number): number => Math.max(0, Math.round(mean + Math.sqrt(spread) * normalQuantile(level)))
    return { low: at(low), high: at(high) }
  }
  const shares = countShares(mean, spread)
  return { low: countQuantile(shares, low), high: countQuantile(shares, high) }
}

/** Shares of 0, 1, 2, … up to where hardly anything is left. */
function countShares(mean: number, variance: number): Float64Array {
  const top = Math.ceil(mean + 12 * Math.sqrt(variance) + 25)
  const shares = new Float64Array(top + 1)
  const isPoisson = variance < mean * (1 + 1e-9)
  const size = (mean * mean) / (variance - mean)
  const kept = mean / variance
  shares[0] = isPoisson ? Math.exp(-mean) : Math.exp(size * Math.log(kept))
  for (let count = 0; count < top; count++) {
    const step = isPoisson ? mean / (count + 1) : ((count + size) / (count + 1)) * (1 - kept)
    shares[count + 1] = shares[count]! * step
  }
  return shares
}
