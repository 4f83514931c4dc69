/**
 * The plane stretched so that correlation depends on plain distance and is gone at distance 1: turned to the major
 * direction and divided by the range along and across it. Also the correlation itself.
 */
import { exponentialFactor, maternThreeHalvesFactor } from '../variogram/shapes.ts'
import type { VariogramKind } from '../variogram/variogram.ts'
import { type FieldParams, meanPriorVariance } from './fieldParams.ts'

/** p = xp x + yp y, q = xq x + yq y. */
export interface Warp {
  xp: number
  yp: number
  xq: number
  yq: number
}

export function warpFor(params: Pick<FieldParams, 'practicalRangeM' | 'majorBearingDeg' | 'anisotropyRatio'>): Warp {
  const bearing = (params.majorBearingDeg * Math.PI) / 180
  const stretch = Math.sqrt(params.anisotropyRatio)
  const along = stretch / params.practicalRangeM
  const across = 1 / (stretch * params.practicalRangeM)
  return {
    xp: along * Math.sin(bearing),
    yp: along * Math.cos(bearing),
    xq: across * Math.cos(bearing),
    yq: -across * Math.sin(bearing),
  }
}

export function warpInto(
  warp: Warp,
  xM: ArrayLike<number>,
  yM: ArrayLike<number>,
  p: Float64Array,
  q: Float64Array,
): void {
  for (let i = 0; i < xM.length; i++) {
    p[i] = warp.xp * xM[i]! + warp.yp * yM[i]!
    q[i] = warp.xq * xM[i]! + warp.yq * yM[i]!
  }
}

/** exp(-exponentialFactor h) in steps of 1/1024; between them two terms of its series are good to 1e-9. */
const perRange = 1024
const farthest = 12
const decay = Float64Array.from({ length: farthest * perRange + 2 }, (_, k) =>
  Math.exp((-exponentialFactor * k) / perRange),
)

function exponentialAt(squared: number): number {
  const h = Math.sqrt(squared) * perRange
  if (!(h < farthest * perRange)) return 0
  const k = (h + 0.5) | 0
  const off = ((k - h) * exponentialFactor) / perRange
  return decay[k]! * (1 + off * (1 + 0.5 * off))
}

/** Correlation at a squared distance on the stretched plane; 1 at 0. */
export function correlationAt(kind: VariogramKind, squared: number): number {
  if (kind === 'spherical') {
    if (squared >= 1) return 0
    const h = Math.sqrt(squared)
    return 1 - h * (1.5 - 0.5 * squared)
  }
  if (kind === 'exponential') return exponentialAt(squared)
  if (kind === 'gaussian') return Math.exp(-exponentialFactor * squared)
  const s = maternThreeHalvesFactor * Math.sqrt(squared)
  return (1 + s) * Math.exp(-s)
}

/**
 * Covariances of a place with `count` others, in variances of the scores: the part that goes with distance, and the
 * unknown mean they share.
 * @param shared  1 - nugget share
 * @param out     written from `at` on
 */
export function covariancesInto(
  kind: VariogramKind,
  shared: number,
  p0: number,
  q0: number,
  p: Float64Array,
  q: Float64Array,
  count: number,
  out: Float64Array,
  at: number,
): void {
  if (kind === 'spherical') {
    for (let j = 0; j < count; j++) {
      const dp = p0 - p[j]!
      const dq = q0 - q[j]!
      const squared = dp * dp + dq * dq
      out[at + j] = meanPriorVariance + (squared >= 1 ? 0 : shared * (1 - Math.sqrt(squared) * (1.5 - 0.5 * squared)))
    }
    return
  }
  for (let j = 0; j < count; j++) {
    const dp = p0 - p[j]!
    const dq = q0 - q[j]!
    const squared = dp * dp + dq * dq
    out[at + j] =
      meanPriorVariance + shared * (kind === 'exponential' ? exponentialAt(squared) : correlationAt(kind, squared))
  }
}
