/** Every gauge estimated from all the others by ordinary kriging, out of one factorisation. */

import { ScienceError } from '../error.ts'
import type { Variogram } from '../variogram/variogram.ts'
import { inverseOf } from './cholesky.ts'
import { checkShapes, type Estimates, factorCovariances, type MeasuredPoints } from './krigingSystem.ts'

/**
 * @param gauges  n gauges, at least 2
 * @returns for each gauge what ordinary kriging from the n - 1 others gives at its place: amountMm, varianceMm2
 * @throws {ScienceError} SHAPES_DIFFER; TOO_FEW_POINTS; SITES_COINCIDE; SYSTEM_SINGULAR
 * @remarks Time O(n³) for all, not for each. With P = C⁻¹ - C⁻¹1 1ᵀC⁻¹ / 1ᵀC⁻¹1 the error at i is (P y)ᵢ / Pᵢᵢ and its
 *   variance 1 / Pᵢᵢ. Source: [Dubrule1983].
 */
export function leaveOneOut(gauges: MeasuredPoints, variogram: Variogram): Estimates {
  const n = checkShapes(gauges)
  if (n < 2) throw new ScienceError('TOO_FEW_POINTS', `leaveOneOut needs 2 gauges and got ${n}`)
  const matrix = new Float64Array(n * n)
  factorCovariances(
    gauges,
    Int32Array.from({ length: n }, (_, i) => i),
    n,
    variogram,
    matrix,
    n,
  )
  const inverse = inverseOf(matrix, n, n)
  const sums = new Float64Array(n)
  let total = 0
  let weighted = 0
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) sums[i]! += inverse[i * n + j]!
    total += sums[i]!
    weighted += sums[i]! * gauges.amountMm[i]!
  }
  const out: Estimates = { amountMm: new Float64Array(n), varianceMm2: new Float64Array(n) }
  for (let i = 0; i < n; i++) {
    let product = (-sums[i]! * weighted) / total
    for (let j = 0; j < n; j++) product += inverse[i * n + j]! * gauges.amountMm[j]!
    const precision = inverse[i * n + i]! - (sums[i]! * sums[i]!) / total
    out.varianceMm2[i] = 1 / precision
    out.amountMm[i] = gauges.amountMm[i]! - product / precision
  }
  return out
}
