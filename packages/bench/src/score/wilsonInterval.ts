/** Interval for a share from a count of successes. */

/** Two-sided 95 % quantile of the standard normal distribution. */
export const z95 = 1.959963984540054

/**
 * Score interval for a binomial share, without correction for continuity: the shares that a normal test would not
 * reject. Stays within 0 and 1, and is of use for 0 successes.
 * @param successes  0 to count; need not be whole (effective numbers)
 * @returns NaN at both ends when the count is 0
 * @remarks Source: [Wilson1927]; method 3 of [Newcombe1998].
 */
export function wilsonInterval(successes: number, count: number, z = z95): { low: number; high: number } {
  if (!(count > 0)) return { low: Number.NaN, high: Number.NaN }
  const share = successes / count
  const middle = successes + (z * z) / 2
  const half = z * Math.sqrt((z * z) / 4 + count * share * (1 - share))
  // Rounding may leave -1e-19 at 0 successes.
  return { low: Math.max(0, (middle - half) / (count + z * z)), high: Math.min(1, (middle + half) / (count + z * z)) }
}
