/**
 * Continuous ranked probability score: the integral of (F(t) - 1{t >= y})², in the unit of the amount; 0 is perfect.
 * Closed forms for the Gaussian, the Gaussian censored at zero and its square; sums for quantiles and ensembles.
 * Sources: [Gneiting2005] (Gaussian), [Thorarinsdottir2010] (censored), [Brocker2012] (quantiles and ensembles).
 */
import { normalCdf, normalPdf } from './normalCdf.ts'

const rootTwo = Math.SQRT2
const rootPiInverse = 1 / Math.sqrt(Math.PI)

export function crpsGaussian(mean: number, sd: number, seen: number): number {
  const z = (seen - mean) / sd
  return sd * (z * (1 - 2 * normalCdf(-z)) + 2 * normalPdf(z) - rootPiInverse)
}

/** Score of max(0, N(mean, sd²)); seen >= 0. */
export function crpsCensoredGaussian(mean: number, sd: number, seen: number): number {
  const z = (seen - mean) / sd
  return sd * (squareBelow(z) - squareBelow(-mean / sd) + squareBelow(-z))
}

/** Score of max(0, N(mean, sd²))², as after kriging of square roots; seen >= 0. */
export function crpsSquaredCensoredGaussian(mean: number, sd: number, seen: number): number {
  const z = (Math.sqrt(seen) - mean) / sd
  const dry = -mean / sd
  const below = mean * (squareBelow(z) - squareBelow(dry)) + sd * (momentBelow(z) - momentBelow(dry))
  const above = mean * squareBelow(-z) - sd * momentBelow(-z)
  return 2 * sd * (below + above)
}

/**
 * Score of a forecast given as n evenly spaced quantiles, levels (k - 0.5) / n; the same as that of an ensemble of n
 * members in ascending order, every member equally likely.
 * @param sorted  n quantiles or members, ascending
 */
export function crpsQuantiles(sorted: ArrayLike<number>, seen: number): number {
  const n = sorted.length
  let sum = 0
  for (let k = 0; k < n; k++) {
    const value = sorted[k]!
    sum += pinballLoss(value, (k + 0.5) / n, seen)
  }
  return (2 * sum) / n
}

/** Loss of one quantile; its mean over levels is half the score. */
export function pinballLoss(quantile: number, level: number, seen: number): number {
  return seen < quantile ? (1 - level) * (quantile - seen) : level * (seen - quantile)
}

/** Integral of Φ(t)² from -∞ to z. */
function squareBelow(z: number): number {
  const share = normalCdf(z)
  return z * share * share + 2 * normalPdf(z) * share - rootPiInverse * normalCdf(rootTwo * z)
}

/** Integral of t Φ(t)² from -∞ to z. */
function momentBelow(z: number): number {
  const share = normalCdf(z)
  const density = normalPdf(z)
  return 0.5 * ((z * z - 1) * share * share + density * density) + z * share * density
}
