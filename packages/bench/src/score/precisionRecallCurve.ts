/** The curve of precision against recall, thinned to what can be drawn. */

export interface PrecisionRecallCurve {
  /** Ascending, one point for each hundredth of recall that the ranking passes. */
  recall: number[]
  /** At the limit at which that recall is first reached; ties with the limit enter together. */
  precision: number[]
}

/**
 * @param wrong  scores of the wrong readings, any order; higher = more suspect
 * @param good   scores of the good readings, any order
 */
export function precisionRecallCurve(wrong: Float64Array, good: Float64Array, steps = 100): PrecisionRecallCurve {
  const wrongUp = Float64Array.from(wrong).sort()
  const goodUp = Float64Array.from(good).sort()
  const curve: PrecisionRecallCurve = { recall: [], precision: [] }
  let found = 0
  let alarms = 0
  for (let step = 1; step <= steps && wrongUp.length > 0; step++) {
    const wanted = Math.ceil((step / steps) * wrongUp.length - 1e-9)
    if (wanted <= found) continue
    const limit = wrongUp[wrongUp.length - wanted]!
    while (found < wrongUp.length && wrongUp[wrongUp.length - 1 - found]! >= limit) found++
    while (alarms < goodUp.length && goodUp[goodUp.length - 1 - alarms]! >= limit) alarms++
    curve.recall.push(found / wrongUp.length)
    curve.precision.push(found / (found + alarms))
  }
  return curve
}
