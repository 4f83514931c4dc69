/**
 * Quantiles of a sample by linear interpolation of order statistics, h = (n - 1) p + 1.
 * Source: type 7 of [Hyndman1996], as in the WMO guide to normals.
 */

/**
 * @param sorted  n values, ascending; no NaN
 * @param share   0 to 1
 * @returns NaN when there are no values
 */
export function quantileOfSorted(sorted: ArrayLike<number>, share: number): number {
  const n = sorted.length
  if (n === 0) return Number.NaN
  const position = (n - 1) * share
  const below = Math.min(n - 1, Math.max(0, Math.floor(position)))
  const low = sorted[below]!
  if (below === n - 1) return low
  return low + (position - below) * (sorted[below + 1]! - low)
}

/** The same of values in any order; NaN values are skipped. Allocates a sorted copy. */
export function quantile(values: ArrayLike<number>, share: number): number {
  return quantileOfSorted(sortedValues(values), share)
}

/** A sorted copy without the NaN values. */
export function sortedValues(values: ArrayLike<number>): Float64Array {
  let count = 0
  const copy = new Float64Array(values.length)
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!
    if (!Number.isNaN(value)) copy[count++] = value
  }
  return copy.subarray(0, count).sort()
}
