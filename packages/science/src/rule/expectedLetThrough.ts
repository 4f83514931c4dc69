/**
 * What a rule "let stand when at least this sure" lets through: how many readings, and how many of them are expected to be
 * wrong by the calibrated odds themselves. A reading that stands with odds p is wrong with odds 1 - p; the number of wrong
 * ones is then Poisson-binomial ([Hong2013]) with mean Σ(1 - p) and variance Σ p(1 - p).
 */
import { ScienceError } from '../error.ts'
import { normalQuantile } from '../stats/normalQuantile.ts'
import { countQuantile, poissonBinomial } from './poissonBinomial.ts'

export interface LetThrough {
  letStand: number
  leftToPerson: number
  /** Among those let stand. */
  expectedWrong: number
  varianceWrong: number
  /** P10 and P90 of the number of wrong readings among those let stand. */
  lowWrong: number
  highWrong: number
}

const LOW = 0.1
const HIGH = 0.9
/** Steps of the exact recursion that are still quick; beyond, the count is large enough to be normal. */
const EXACT_STEPS = 4e7

/**
 * @param pStands     odds of standing, 0 to 1, of every reading that can be told; no NaN
 * @param letStandAt  the rule's threshold, above 0; a reading exactly on it is let stand
 * @throws {ScienceError} OUT_OF_DOMAIN where odds or threshold are none
 * @remarks Time O(n · expectedWrong).
 */
export function expectedLetThrough(pStands: ArrayLike<number>, letStandAt: number): LetThrough {
  if (!(letStandAt > 0)) throw new ScienceError('OUT_OF_DOMAIN', `a threshold of ${letStandAt}`)
  const wrong: number[] = []
  let expectedWrong = 0
  let varianceWrong = 0
  for (let i = 0; i < pStands.length; i++) {
    const stands = pStands[i]!
    if (!(stands >= 0 && stands <= 1))
      throw new ScienceError('OUT_OF_DOMAIN', `reading ${i} stands with odds ${stands}`)
    if (stands < letStandAt) continue
    wrong.push(1 - stands)
    expectedWrong += 1 - stands
    varianceWrong += stands * (1 - stands)
  }
  const counts = { letStand: wrong.length, leftToPerson: pStands.length - wrong.length }
  return { ...counts, expectedWrong, varianceWrong, ...rangeOf(wrong, expectedWrong, varianceWrong) }
}

function rangeOf(wrong: readonly number[], mean: number, variance: number): { lowWrong: number; highWrong: number } {
  const most = Math.min(wrong.length, Math.ceil(mean + 9 * Math.sqrt(variance) + 12))
  if (wrong.length * most > EXACT_STEPS) {
    const at = (level: number): number => Math.round(mean + Math.sqrt(variance) * normalQuantile(level))
    return { lowWrong: at(LOW), highWrong: at(HIGH) }
  }
  const shares = poissonBinomial(wrong, most)
  return { lowWrong: countQuantile(shares, LOW), highWrong: countQuantile(shares, HIGH) }
}

/**
 * The lowest threshold at which no more than `mostWrong` wrong readings are expected to be let through: the one that
 * leaves least to a person.
 * @param pStands  odds of standing, 0 to 1; no NaN
 * @returns odds that some reading has, or null where even the surest readings alone are expected to hold more
 * @remarks Time O(n log n); the input is not changed.
 */
export function letStandAtFor(pStands: ArrayLike<number>, mostWrong: number): number | null {
  const rising = Float64Array.from(pStands).sort()
  let wrong = 0
  let letStandAt: number | null = null
  for (let i = rising.length - 1; i >= 0; i--) {
    wrong += 1 - rising[i]!
    // Equal odds are let stand together.
    if (i > 0 && rising[i - 1] === rising[i]) continue
    if (wrong > mostWrong) break
    letStandAt = rising[i]!
  }
  return letStandAt
}
