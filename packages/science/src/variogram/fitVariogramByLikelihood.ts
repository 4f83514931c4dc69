/**
 * Fit nugget, partial sill, range and, if asked, anisotropy to the amounts themselves by restricted maximum likelihood,
 * which pays for the unknown mean. The total sill follows in closed form from the rest. Source: [Patterson1971],
 * [Diggle2007]. Amounts should be near normal: transform them first if they are not.
 */
import { ScienceError } from '../error.ts'
import { dot, factorInPlace, solveLowerInPlace } from '../krige/cholesky.ts'
import { checkShapes, type MeasuredPoints } from '../krige/krigingSystem.ts'
import { minimise } from '../stats/minimise.ts'
import { type Anisotropy, shareOfSill, type Variogram, type VariogramKind } from './variogram.ts'

export interface FitByLikelihoodAsk {
  kind: VariogramKind
  anisotropic?: boolean
}

export interface FittedVariogram {
  variogram: Variogram
  /** Restricted log-likelihood at the fit. */
  logLikelihood: number
}

/**
 * @throws {ScienceError} SHAPES_DIFFER; TOO_FEW_POINTS with fewer than 4 gauges
 * @remarks Time O(n³) for each of some hundred trials.
 */
export function fitVariogramByLikelihood(gauges: MeasuredPoints, ask: FitByLikelihoodAsk): FittedVariogram {
  const n = checkShapes(gauges)
  if (n < 4) throw new ScienceError('TOO_FEW_POINTS', `fitting by likelihood needs 4 gauges and got ${n}`)
  let widest = 0
  for (let i = 0; i < n; i++)
    for (let j = 0; j < i; j++)
      widest = Math.max(widest, Math.hypot(gauges.xM[i]! - gauges.xM[j]!, gauges.yM[i]! - gauges.yM[j]!))
  const matrix = new Float64Array(n * n)
  const trial = (at: Float64Array): number => restricted(gauges, shapeAt(ask.kind, at, widest), matrix).deviance
  const start = ask.anisotropic ? [-1, -2, 0, 0] : [-1, -2]
  const steps = ask.anisotropic ? [0.7, 1, 0.4, 0.4] : [0.7, 1]
  let best = minimise(trial, start, { steps, mostEvaluations: 400, tolerance: 1e-9 })
  best = minimise(trial, best.at, { steps: steps.map((s) => -0.3 * s), mostEvaluations: 400, tolerance: 1e-10 })
  const shape = shapeAt(ask.kind, best.at, widest)
  const { totalMm2, deviance } = restricted(gauges, shape, matrix)
  return {
    variogram: {
      ...shape,
      nuggetMm2: shape.nuggetMm2 * totalMm2,
      partialSillMm2: shape.partialSillMm2 * totalMm2,
    },
    logLikelihood: -0.5 * deviance,
  }
}

/** Shape of total sill 1 from free variables: ln range / widest, logit nugget share, two of anisotropy. */
function shapeAt(kind: VariogramKind, at: Float64Array, widestM: number): Variogram {
  const nuggetShare = 1 / (1 + Math.exp(-Math.max(-20, at[1]!)))
  const stretch = at.length > 2 ? Math.min(3, Math.hypot(at[2]!, at[3]!)) : 0
  const shape: Variogram = {
    kind,
    nuggetMm2: nuggetShare,
    partialSillMm2: 1 - nuggetShare,
    practicalRangeM: widestM * Math.exp(Math.max(-6, Math.min(3, at[0]!)) + 0.5 * stretch),
  }
  if (stretch > 0) shape.anisotropy = anisotropyFrom(at[2]!, at[3]!, stretch)
  return shape
}

/** Stretch along a bearing kept as a point of the plane of twice that bearing, smooth through "no anisotropy". */
function anisotropyFrom(cosine: number, sine: number, stretch: number): Anisotropy {
  const bearing = (0.5 * Math.atan2(sine, cosine) * 180) / Math.PI
  return { majorBearingDeg: (bearing + 180) % 180, ratio: Math.exp(-stretch) }
}

function restricted(
  gauges: MeasuredPoints,
  shape: Variogram,
  matrix: Float64Array,
): { deviance: number; totalMm2: number } {
  const n = gauges.amountMm.length
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++)
      matrix[i * n + j] =
        shape.partialSillMm2 * (1 - shareOfSill(shape, gauges.xM[i]! - gauges.xM[j]!, gauges.yM[i]! - gauges.yM[j]!))
    matrix[i * n + i] = 1
  }
  if (factorInPlace(matrix, n, n, 1e-13) >= 0) return { deviance: Number.POSITIVE_INFINITY, totalMm2: Number.NaN }
  const values = Float64Array.from(gauges.amountMm)
  const ones = new Float64Array(n).fill(1)
  solveLowerInPlace(matrix, n, n, values)
  solveLowerInPlace(matrix, n, n, ones)
  let logDeterminant = 0
  for (let i = 0; i < n; i++) logDeterminant -= 2 * Math.log(matrix[i * n + i]!)
  const information = dot(ones, 0, ones, 0, n)
  const cross = dot(ones, 0, values, 0, n)
  const squares = dot(values, 0, values, 0, n) - (cross * cross) / information
  const totalMm2 = squares / (n - 1)
  const deviance = (n - 1) * (Math.log(2 * Math.PI * totalMm2) + 1) + logDeterminant + Math.log(information)
  return { deviance, totalMm2 }
}
