/** How same-day correlation falls with distance. */
import { type Correlation, correlationByShift } from './correlation.ts'
import type { PairSeen } from './pairHistory.ts'

/** Weighted least squares of same-day correlations on two exponentials and a plateau, all non-negative, on a grid of ranges. */
export function learnDistance(correlation: Correlation, pairs: PairSeen[]): void {
  const rows: { distanceM: number; value: number; weight: number }[] = []
  for (const pair of pairs) {
    const shift = correlation.offsetDays[pair.i]! - correlation.offsetDays[pair.j]!
    if (Math.abs(shift) > 0.26) continue
    const value = pair.byLag[2]! / correlationByShift(correlation, shift)
    rows.push({ distanceM: pair.distanceM, value, weight: Math.min(1, pair.days / 400) / (0.1 + (1 - value) ** 2) })
  }
  if (rows.length < 6) return
  let best = Number.POSITIVE_INFINITY
  for (const shortRangeM of [6_000, 10_000, 16_000, 25_000, 40_000, 60_000]) {
    for (const longRangeM of [80_000, 120_000, 180_000, 280_000, 450_000, 700_000]) {
      const fit = fitNonNegative(rows, shortRangeM, longRangeM)
      if (fit.loss >= best) continue
      best = fit.loss
      const total = fit.a + fit.b + fit.c
      const shrink = total > 0.985 ? 0.985 / total : 1
      correlation.shortRangeM = shortRangeM
      correlation.longRangeM = longRangeM
      correlation.shortShare = fit.a * shrink
      correlation.longShare = fit.b * shrink
      correlation.plateau = fit.c * shrink
    }
  }
}

function fitNonNegative(
  rows: { distanceM: number; value: number; weight: number }[],
  shortRangeM: number,
  longRangeM: number,
): { a: number; b: number; c: number; loss: number } {
  const m = new Float64Array(9)
  const r = new Float64Array(3)
  let yy = 0
  for (const row of rows) {
    const x = [Math.exp(-row.distanceM / shortRangeM), Math.exp(-row.distanceM / longRangeM), 1]
    for (let p = 0; p < 3; p++) {
      r[p]! += row.weight * x[p]! * row.value
      for (let q = 0; q < 3; q++) m[p * 3 + q]! += row.weight * x[p]! * x[q]!
    }
    yy += row.weight * row.value * row.value
  }
  const beta = [0.3, 0.3, 0.1]
  for (let sweep = 0; sweep < 400; sweep++) {
    for (let p = 0; p < 3; p++) {
      let rest = r[p]!
      for (let q = 0; q < 3; q++) if (q !== p) rest -= m[p * 3 + q]! * beta[q]!
      beta[p] = Math.max(0, rest / m[p * 3 + p]!)
    }
  }
  let loss = yy
  for (let p = 0; p < 3; p++) {
    loss -= 2 * beta[p]! * r[p]!
    for (let q = 0; q < 3; q++) loss += beta[p]! * beta[q]! * m[p * 3 + q]!
  }
  return { a: beta[0]!, b: beta[1]!, c: beta[2]!, loss }
}
