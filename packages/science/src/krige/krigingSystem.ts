/** What the kriging methods share: their inputs, checks and covariances. */
import { ScienceError } from '../error.ts'
import { shareOfSill, type Variogram } from '../variogram/variogram.ts'
import { factorInPlace } from './cholesky.ts'

export interface MeasuredPoints {
  xM: ArrayLike<number>
  yM: ArrayLike<number>
  amountMm: ArrayLike<number>
}

export interface Targets {
  xM: ArrayLike<number>
  yM: ArrayLike<number>
}

export interface Estimates {
  amountMm: Float64Array
  varianceMm2: Float64Array
}

/** @throws {ScienceError} SHAPES_DIFFER; TOO_FEW_POINTS for no gauge at all */
export function checkShapes(gauges: MeasuredPoints, targets?: Targets): number {
  const n = gauges.amountMm.length
  if (gauges.xM.length !== n || gauges.yM.length !== n)
    throw new ScienceError(
      'SHAPES_DIFFER',
      `kriging got ${n} amounts, ${gauges.xM.length} x and ${gauges.yM.length} y; all three must be of one length`,
    )
  if (targets && targets.xM.length !== targets.yM.length)
    throw new ScienceError('SHAPES_DIFFER', `kriging got ${targets.xM.length} target x and ${targets.yM.length} y`)
  if (n === 0) throw new ScienceError('TOO_FEW_POINTS', 'kriging needs at least 1 gauge and got none')
  return n
}

/** Covariance (mm²) at a lag: total sill less semivariance. At lag 0 it is the total sill, nugget included. */
export function covarianceMm2(variogram: Variogram, dxM: number, dyM: number): number {
  if (dxM === 0 && dyM === 0) return variogram.nuggetMm2 + variogram.partialSillMm2
  return variogram.partialSillMm2 * (1 - shareOfSill(variogram, dxM, dyM))
}

/**
 * Factor of the covariances among some of the gauges, written to `matrix` (stride `stride`).
 * @throws {ScienceError} SITES_COINCIDE (names both); SYSTEM_SINGULAR
 */
export function factorCovariances(
  gauges: MeasuredPoints,
  which: ArrayLike<number>,
  count: number,
  variogram: Variogram,
  matrix: Float64Array,
  stride: number,
): void {
  for (let a = 0; a < count; a++) {
    const i = which[a]!
    for (let b = 0; b < a; b++) {
      const j = which[b]!
      const dx = gauges.xM[i]! - gauges.xM[j]!
      const dy = gauges.yM[i]! - gauges.yM[j]!
      if (dx === 0 && dy === 0)
        throw new ScienceError(
          'SITES_COINCIDE',
          `gauges ${Math.min(i, j)} and ${Math.max(i, j)} stand at one place; join them before kriging`,
        )
      matrix[a * stride + b] = covarianceMm2(variogram, dx, dy)
    }
    matrix[a * stride + a] = variogram.nuggetMm2 + variogram.partialSillMm2
  }
  const total = variogram.nuggetMm2 + variogram.partialSillMm2
  const failed = factorInPlace(matrix, count, stride, 1e-13 * total)
  if (failed >= 0)
    throw new ScienceError(
      'SYSTEM_SINGULAR',
      `the covariances of ${count} gauges are singular at gauge ${which[failed]}; a nugget above 0 or another shape helps`,
    )
}
