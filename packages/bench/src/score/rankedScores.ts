/** Figures of merit for a score that ranks wrong readings above good ones. Higher score = more suspect. */

/**
 * Area under precision-recall as average precision: sum over distinct scores, from the most suspect, of
 * (recall gained) x (precision there). Ties enter together, as in scikit-learn's average_precision_score.
 * @param wrong  scores of the wrong readings, any order
 * @param good   scores of the good readings, any order
 * @returns 0 to 1; NaN when nothing is wrong
 * @remarks Time O(n log n); the inputs are not changed.
 */
export function averagePrecision(wrong: Float64Array, good: Float64Array): number {
  if (wrong.length === 0) return Number.NaN
  const wrongUp = Float64Array.from(wrong).sort()
  const goodUp = Float64Array.from(good).sort()
  let wrongLeft = wrongUp.length
  let goodLeft = goodUp.length
  let area = 0
  while (wrongLeft > 0) {
    const score = Math.max(wrongUp[wrongLeft - 1]!, goodLeft > 0 ? goodUp[goodLeft - 1]! : Number.NEGATIVE_INFINITY)
    const before = wrongLeft
    while (wrongLeft > 0 && wrongUp[wrongLeft - 1] === score) wrongLeft--
    while (goodLeft > 0 && goodUp[goodLeft - 1] === score) goodLeft--
    const found = wrongUp.length - wrongLeft
    const flagged = found + goodUp.length - goodLeft
    area += ((before - wrongLeft) / wrongUp.length) * (found / flagged)
  }
  return area
}

/**
 * The lowest limit at which at most the wanted share of good readings score above it. A reading is found when its
 * score is above the limit, so that a tie with the limit is not found.
 */
export function limitAtFalseAlarms(good: Float64Array, share: number): number {
  const goodUp = Float64Array.from(good).sort()
  const allowed = Math.floor(share * goodUp.length + 1e-9)
  return allowed >= goodUp.length ? Number.NEGATIVE_INFINITY : goodUp[goodUp.length - 1 - allowed]!
}

/** Share of the wrong readings that score above the limit. */
export function recallAbove(wrong: Float64Array, limit: number): number {
  let found = 0
  for (const score of wrong) if (score > limit) found++
  return found / wrong.length
}
