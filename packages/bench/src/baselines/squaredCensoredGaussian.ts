/**
 * The square of a Gaussian censored at zero: amount = max(0, N(mean, deviation²))², the predictive distribution of
 * kriging of square roots. Arguments in square roots of mm, amounts in mm.
 */
import { normalCdf, normalDensity } from './normalCdf.ts'

/**
 * CRPS in closed form: E|Y - y| - E max(Y, Y') + E Y, each from incomplete moments of the Gaussian.
 * @remarks Derived by parts; checked against shared numerical integration (squaredCensoredGaussian.test.ts).
 */
export function crpsOfSquaredCensoredMm(meanRoot: number, deviationRoot: number, observedMm: number): number {
  if (deviationRoot <= 0) return Math.abs(Math.max(0, meanRoot) ** 2 - observedMm)
  const m = meanRoot
  const s = deviationRoot
  const c = -m / s
  const cdfC = normalCdf(c)
  const densityC = normalDensity(c)
  const aboveC = normalCdf(-c)
  const secondMoment = (m * m + s * s) * aboveC + 2 * m * s * densityC + s * s * c * densityC

  const zero = (aboveC * (1 + cdfC)) / 2
  const first = densityC * cdfC + normalCdf(-c * Math.SQRT2) / (2 * Math.sqrt(Math.PI))
  const second = c * densityC * cdfC + zero + (densityC * densityC) / 2
  const largerOfTwo = 2 * (m * m * zero + 2 * m * s * first + s * s * second)

  const z = (Math.sqrt(observedMm) - m) / s
  const cdfZ = normalCdf(z)
  const densityZ = normalDensity(z)
  const below =
    (m * m + s * s) * (cdfZ - cdfC) + 2 * m * s * (densityC - densityZ) + s * s * (c * densityC - z * densityZ)
  const distance = observedMm * (2 * cdfZ - 1) + secondMoment - 2 * below
  return distance - largerOfTwo + secondMoment
}

/** Chance that such an amount is at or below `amountMm` (0 or more). */
export function cdfOfSquaredCensored(meanRoot: number, deviationRoot: number, amountMm: number): number {
  return normalCdf((Math.sqrt(amountMm) - meanRoot) / deviationRoot)
}
