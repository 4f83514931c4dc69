/** Tails of the binomial distribution, summed term by term. */
import { logGamma } from './logGamma.ts'

function logTerm(count: number, trials: number, chance: number): number {
  const ways = logGamma(trials + 1) - logGamma(count + 1) - logGamma(trials - count + 1)
  return ways + count * Math.log(chance) + (trials - count) * Math.log1p(-chance)
}

/**
 * Chance of at least `count` successes in `trials`, each with `chance` (above 0, below 1).
 * @remarks Time O(trials).
 */
export function binomialAtLeast(count: number, trials: number, chance: number): number {
  if (count <= 0) return 1
  if (count > trials) return 0
  // The shorter tail is summed, so that a small chance keeps its digits.
  const isUpper = count > trials * chance
  let sum = 0
  if (isUpper) for (let k = count; k <= trials; k++) sum += Math.exp(logTerm(k, trials, chance))
  else for (let k = 0; k < count; k++) sum += Math.exp(logTerm(k, trials, chance))
  return Math.min(1, Math.max(0, isUpper ? sum : 1 - sum))
}

/** Smallest count that is reached with at most the chance `level`: from there on the test rejects, one-sided. */
export function binomialLimit(trials: number, chance: number, level: number): number {
  let low = 0
  let high = trials + 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (binomialAtLeast(middle, trials, chance) <= level) high = middle
    else low = middle
  }
  return high
}
