/**
 * What the decisions of persons say of how often each gauge's readings are mistaken, and in which ways. Empirical Bayes:
 * counts of mistakes are gamma-Poisson over the gauges [Greenwood1920], shares of the mistakes Dirichlet about the usual.
 */
import { type Mistake, mistakes } from '../mistakes/mistake.ts'
import type { MistakeShares } from '../mistakes/rates.ts'
import { mistakeShare } from '../mistakes/rates.ts'
import { fitGammaPoisson, type GammaPoisson, gammaPoissonFactor, type VariationPrior } from '../stats/gammaPoisson.ts'

/** Readings of a time in which somebody decided about doubts, by gauge; arrays of n gauges. */
export interface DecidedCounts {
  /** Decided by a person as mistaken: amended to something else, or set aside. */
  mistaken: Float64Array
  /** Decided by a person as standing. */
  standing: Float64Array
  /** Passed without a person. */
  passed: Float64Array
  /** Of the mistaken ones of all gauges, how many by the mistake that the finding named; those without a name nowhere. */
  named: Readonly<Partial<Record<Mistake, number>>>
}

export interface DecidedRates {
  /** Factor on each gauge's share of mistakes (1 is usual); Float64Array(n). */
  factor: Float64Array
  /** Share of each mistake in the network's mistakes; sums to 1. */
  share: MistakeShares
  /** Coefficient of variation of the gauges' true factors; null where no mistake was found. */
  variation: number | null
}

/** Observers differ about as much as their rate itself: the common finding on repeated accidents [Greenwood1920]. */
const usualVariation: VariationPrior = { middle: 0.8, logSd: 0.5 }
/** How far decisions alone may move a gauge, up and down. */
const mostFactor = 4
/** Named mistakes at which the network's own shares weigh as much as the usual ones. */
const namedToTell = 60
/** Mistakes that show come to a person more often than those that hide: no share is moved further than this. */
const mostShareFactor = 2

/**
 * @param counts  of n gauges; whole numbers
 * @param before  what is already believed of each gauge's factor; 1 for all by default
 * @remarks Each gauge's factor is before × (a + mistaken) / (a + expected), with a = 1 / variation², and expected the
 * network's rate × its readings × before. Where its right readings are doubted more often than others', the factor is
 * divided by that excess, shrunk in the same way: the odds of a mistake among its doubted readings are lower by as much.
 * Few doubts are no evidence of mistakes, so nothing is raised for them. Nothing decided leaves `before` as it is.
 */
export function learnRatesFromDecisions(counts: DecidedCounts, before?: ArrayLike<number>): DecidedRates {
  const n = counts.mistaken.length
  const readings = new Float64Array(n)
  const exposure = new Float64Array(n)
  for (let g = 0; g < n; g++) {
    readings[g] = counts.mistaken[g]! + counts.standing[g]! + counts.passed[g]!
    exposure[g] = readings[g]! * (before?.[g] ?? 1)
  }
  const mistaken = fitGammaPoisson(counts.mistaken, exposure, usualVariation)
  const doubted = fitGammaPoisson(counts.standing, readings, usualVariation)
  const factor = new Float64Array(n)
  for (let g = 0; g < n; g++) {
    const made = factorOf(mistaken, counts.mistaken[g]!, exposure[g]!)
    const doubtedInVain = Math.max(1, factorOf(doubted, counts.standing[g]!, readings[g]!))
    factor[g] = (before?.[g] ?? 1) * Math.min(mostFactor, Math.max(1 / mostFactor, made / doubtedInVain))
  }
  return { factor, share: sharesFrom(counts.named), variation: mistaken?.variation ?? null }
}

function factorOf(fit: GammaPoisson | null, count: number, exposure: number): number {
  return fit === null ? 1 : gammaPoissonFactor(count, fit.rate * exposure, fit.shape)
}

/**
 * Posterior mean of the shares under a Dirichlet prior about the usual ones, which is a mean of the usual and the found
 * shares; the found ones get less weight where some share would move by more than the factor.
 */
function sharesFrom(named: DecidedCounts['named']): MistakeShares {
  let total = 0
  for (const kind of mistakes) total += named[kind] ?? 0
  if (total === 0) return mistakeShare
  let weight = Math.min(total / (total + namedToTell), 1 - 1 / mostShareFactor)
  for (const kind of mistakes) {
    const grows = (named[kind] ?? 0) / total / mistakeShare[kind] - 1
    if (grows > 0) weight = Math.min(weight, (mostShareFactor - 1) / grows)
  }
  const shareOf = (kind: Mistake): number => (1 - weight) * mistakeShare[kind] + (weight * (named[kind] ?? 0)) / total
  return Object.fromEntries(mistakes.map((kind) => [kind, shareOf(kind)])) as MistakeShares
}
