/** Ordinary kriging: the best linear unbiased estimate with an unknown mean. Other methods stand beside this file. */
import { ScienceError } from '../error.ts'
import { NearestIndex } from '../space/nearest.ts'
import type { Variogram } from '../variogram/variogram.ts'
import { dot, solveLowerInPlace } from './cholesky.ts'
import {
  checkShapes,
  covarianceMm2,
  type Estimates,
  factorCovariances,
  type MeasuredPoints,
  type Targets,
} from './krigingSystem.ts'

export interface KrigingAsk {
  /** Use only this many nearest gauges for each target; all when not given. */
  nearest?: number
}

/**
 * Estimate amounts at points by ordinary kriging, with the variance of the error. Weights sum to 1.
 * @param gauges     n gauges: xM, yM, amountMm; one metric plane; no NaN
 * @param targets    m points: xM, yM
 * @param variogram  semivariance in mm² against lag in m
 * @returns amountMm, varianceMm2, Float64Array(m): of a new reading there, nugget included; 0 variance at a gauge.
 *   Amounts may fall below 0; they are not clipped here.
 * @throws {ScienceError} SHAPES_DIFFER; TOO_FEW_POINTS; SITES_COINCIDE (names both indices); SYSTEM_SINGULAR
 * @remarks Time O(n³ + m n²), with `nearest` k O(m (k³ + log n)). Source: [Matheron1963]; mean by generalised least
 *   squares as in [Chiles2012]. Checked: test/published/isaaks1989.test.ts, sic97Kriging.test.ts
 */
export function ordinaryKriging(
  gauges: MeasuredPoints,
  targets: Targets,
  variogram: Variogram,
  ask: KrigingAsk = {},
): Estimates {
  return krigeEach(gauges, targets, variogram, ask, undefined)
}

/** Simple kriging: as ordinaryKriging, with the mean known. */
export function simpleKriging(
  gauges: MeasuredPoints,
  targets: Targets,
  variogram: Variogram,
  meanMm: number,
  ask: KrigingAsk = {},
): Estimates {
  if (!Number.isFinite(meanMm))
    throw new ScienceError('OUT_OF_DOMAIN', `simple kriging needs a finite mean and got ${meanMm}`)
  return krigeEach(gauges, targets, variogram, ask, meanMm)
}

function krigeEach(
  gauges: MeasuredPoints,
  targets: Targets,
  variogram: Variogram,
  ask: KrigingAsk,
  meanMm: number | undefined,
): Estimates {
  const n = checkShapes(gauges, targets)
  const m = targets.xM.length
  const size = Math.min(n, ask.nearest ?? n)
  const out: Estimates = { amountMm: new Float64Array(m), varianceMm2: new Float64Array(m) }
  const chosen = Int32Array.from({ length: size }, (_, k) => k)
  const index = size < n ? new NearestIndex(gauges.xM, gauges.yM) : undefined
  const matrix = new Float64Array(size * size)
  const values = new Float64Array(size)
  const ones = new Float64Array(size)
  const right = new Float64Array(size)
  const total = variogram.nuggetMm2 + variogram.partialSillMm2
  for (let t = 0; t < m; t++) {
    const x = targets.xM[t]!
    const y = targets.yM[t]!
    if (index) index.nearestInto(x, y, size, chosen)
    if (index || t === 0) {
      factorCovariances(gauges, chosen, size, variogram, matrix, size)
      for (let k = 0; k < size; k++) {
        values[k] = gauges.amountMm[chosen[k]!]! - (meanMm ?? 0)
        ones[k] = 1
      }
      solveLowerInPlace(matrix, size, size, values)
      solveLowerInPlace(matrix, size, size, ones)
    }
    for (let k = 0; k < size; k++)
      right[k] = covarianceMm2(variogram, x - gauges.xM[chosen[k]!]!, y - gauges.yM[chosen[k]!]!)
    solveLowerInPlace(matrix, size, size, right)
    const explained = dot(right, 0, right, 0, size)
    const simple = dot(right, 0, values, 0, size)
    if (meanMm !== undefined) {
      out.amountMm[t] = meanMm + simple
      out.varianceMm2[t] = Math.max(0, total - explained)
      continue
    }
    const onesSquared = dot(ones, 0, ones, 0, size)
    const missing = 1 - dot(right, 0, ones, 0, size)
    out.amountMm[t] = simple + (missing * dot(ones, 0, values, 0, size)) / onesSquared
    out.varianceMm2[t] = Math.max(0, total - explained + (missing * missing) / onesSquared)
  }
  return out
}
