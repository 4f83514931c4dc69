/**
 * Counts of rare events at many places whose rates differ: count ~ Poisson(rate × exposure × factor), the factors
 * gamma-distributed with mean 1. Marginally the counts are negative binomial [Greenwood1920]; the spread of the factors
 * is found from all counts together, and each place's factor is then shrunk toward 1 [Efron2016].
 */
import { logGamma } from './logGamma.ts'
import { minimise } from './minimise.ts'

/** ln of the negative binomial chance of a count with this mean; `shape` is 1 / (variation of the factors)². */
export function logNegativeBinomial(count: number, mean: number, shape: number): number {
  if (mean <= 0) return count === 0 ? 0 : Number.NEGATIVE_INFINITY
  const rising = count === 0 ? 0 : logGamma(shape + count) - logGamma(shape) - logGamma(count + 1)
  // log1p keeps the Poisson limit of a large shape exact.
  return rising - shape * Math.log1p(mean / shape) - (count === 0 ? 0 : count * Math.log1p(shape / mean))
}

/** Posterior mean of a place's factor (1 is usual). */
export function gammaPoissonFactor(count: number, mean: number, shape: number): number {
  return (shape + count) / (shape + mean)
}

/** What is believed of the variation before there are counts: lognormal about `middle`. */
export interface VariationPrior {
  middle: number
  logSd: number
}

export interface GammaPoisson {
  /** Events per unit of exposure, over all places. */
  rate: number
  /** Coefficient of variation of the places' factors. */
  variation: number
  /** 1 / variation². */
  shape: number
}

/** Factors all alike at one end, a few places making nearly all events at the other. */
const variationLimits = [0.05, 5] as const

/**
 * Rate and variation by marginal likelihood; with a prior the variation is the one of highest posterior density.
 * @param counts     n whole numbers
 * @param exposures  n numbers, 0 or more; places without exposure say nothing
 * @returns null where no event was counted: then nothing can be told of the rate
 * @remarks Sources: negative binomial likelihood [Bliss1953]; checked in test/published/gammaPoisson.test.ts.
 */
export function fitGammaPoisson(
  counts: ArrayLike<number>,
  exposures: ArrayLike<number>,
  prior: VariationPrior | null,
): GammaPoisson | null {
  let events = 0
  let exposed = 0
  for (let k = 0; k < counts.length; k++) {
    if (!(exposures[k]! > 0)) continue
    events += counts[k]!
    exposed += exposures[k]!
  }
  if (events === 0) return null
  const [low, high] = variationLimits
  const usual = events / exposed
  const minusLogPosterior = (at: Float64Array): number => {
    const rate = usual * Math.exp(at[0]!)
    const logVariation = Math.min(Math.log(high), Math.max(Math.log(low), at[1]!))
    const shape = Math.exp(-2 * logVariation)
    let sum = (at[1]! - logVariation) ** 2
    for (let k = 0; k < counts.length; k++)
      if (exposures[k]! > 0) sum -= logNegativeBinomial(counts[k]!, rate * exposures[k]!, shape)
    if (prior !== null) sum += 0.5 * ((logVariation - Math.log(prior.middle)) / prior.logSd) ** 2
    return sum
  }
  const start = [0, Math.log(prior?.middle ?? 1)]
  const { at } = minimise(minusLogPosterior, start, { steps: [0.3, 0.4], mostEvaluations: 400, tolerance: 1e-11 })
  const variation = Math.min(high, Math.max(low, Math.exp(at[1]!)))
  return { rate: usual * Math.exp(at[0]!), variation, shape: variation ** -2 }
}
