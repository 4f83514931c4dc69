/**
 * The parameters of one day's rain field, and the fixed opinions of its model.
 *
 * Amounts become latent scores w = (amount / (usual · unit))^power; a dry gauge is a score known only to lie below the
 * dry threshold. Scores are a Gaussian process: an unknown mean with a wide prior, a correlation by distance that may
 * be longer in one direction, and a nugget for small-scale rain and gauge error. Fitting is in fitField.ts, use in
 * fieldWith.ts. Sources: censored latent Gaussian rain as in [Bell1987] and [Baxevani2015]; power transforms
 * [Erdin2012]; geostatistics [Chiles2012].
 */
import type { VariogramKind } from '../variogram/variogram.ts'

export interface FieldParams {
  kind: VariogramKind
  /** Distance at which correlation is gone (spherical) or down to 5 %: geometric mean over directions. */
  practicalRangeM: number
  /** Direction of the longest range, degrees clockwise from north, and shortest over longest. */
  majorBearingDeg: number
  anisotropyRatio: number
  /** Share of the variance that does not go with distance, 0 to 1. */
  nuggetShare: number
  /** Exponent of the transform, and the amount (mm) that becomes a score of 1. */
  power: number
  unitMm: number
  /** Standard deviation of the scores, and centre of the prior of their mean. */
  sd: number
  meanCentre: number
}

/** Prior standard deviation of the mean, in standard deviations of the scores: wide, yet no day is infinitely dry. */
export const meanPriorSd = 1.5
export const meanPriorVariance = meanPriorSd * meanPriorSd

/** Nothing is known more sharply than this share of the variance: keeps gauges at one place solvable. */
export const leastVariance = 1e-9
