/**
 * How many of several independent events happen, each with a chance of its own: the Poisson-binomial distribution.
 * Exact, by adding one event after the other. Source: the recursion (method of convolution) in [Hong2013].
 */
import { ScienceError } from '../error.ts'

/**
 * @param chances  0 to 1 each; no NaN
 * @param most     the largest count asked for
 * @returns chance of each count 0…min(most, n); what lies above `most` is left out, so that they may sum to less than 1
 * @throws {ScienceError} OUT_OF_DOMAIN where a chance is not between 0 and 1 (names its index)
 * @remarks Time O(n · most).
 */
export function poissonBinomial(chances: ArrayLike<number>, most = chances.length): Float64Array {
  const top = Math.min(most, chances.length)
  const shares = new Float64Array(top + 1)
  shares[0] = 1
  for (let event = 0; event < chances.length; event++) {
    const chance = chances[event]!
    if (!(chance >= 0 && chance <= 1)) {
      throw new ScienceError('OUT_OF_DOMAIN', `chance ${event} is ${chance}, not between 0 and 1`)
    }
    for (let count = Math.min(event + 1, top); count > 0; count--) {
      shares[count] = shares[count]! * (1 - chance) + shares[count - 1]! * chance
    }
    shares[0]! *= 1 - chance
  }
  return shares
}

/** The smallest count whose cumulated share is at least `level`; the last one where none is. */
export function countQuantile(shares: ArrayLike<number>, level: number): number {
  let cumulated = 0
  for (let count = 0; count < shares.length; count++) {
    cumulated += shares[count]!
    if (cumulated >= level) return count
  }
  return shares.length - 1
}
