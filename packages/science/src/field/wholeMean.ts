/**
 * The mean score anywhere from all gauges at once: weights are solved for once, then each place costs one covariance a
 * gauge. No neighbourhood ends, so maps of the mean have no seams. Source: dual kriging, [Chiles2012] 3.4.
 */
import { dot, factorInPlace, solveLowerInPlace, solveUpperInPlace } from '../krige/cholesky.ts'
import { type FieldParams, leastVariance, meanPriorVariance } from './fieldParams.ts'
import type { Sites } from './localField.ts'
import { covariancesInto } from './warp.ts'

export class WholeMean {
  private readonly sites: Sites
  private readonly kind: FieldParams['kind']
  private readonly shared: number
  private readonly centre: number
  private readonly weights: Float64Array
  private readonly right: Float64Array

  /** Time n³ / 6 for n sites. */
  constructor(sites: Sites, params: FieldParams) {
    const n = sites.p.length
    this.sites = sites
    this.kind = params.kind
    this.shared = 1 - params.nuggetShare
    this.centre = params.meanCentre / params.sd
    this.right = new Float64Array(n)
    const matrix = new Float64Array(n * n)
    const { p, q } = sites
    for (let i = 0; i < n; i++) {
      covariancesInto(this.kind, this.shared, p[i]!, q[i]!, p, q, i, matrix, i * n)
      matrix[i * n + i] = 1 + meanPriorVariance + leastVariance + Math.min(1e6, sites.variance[i]!)
    }
    // Gauges at one place without nugget: a little more room until the factor stands.
    const kept = matrix.slice()
    for (let room = 1e-8; factorInPlace(matrix, n, n, 1e-12) >= 0; room *= 10) {
      matrix.set(kept)
      for (let i = 0; i < n; i++) matrix[i * n + i]! += room
    }
    this.weights = Float64Array.from(sites.mean, (mean) => mean - this.centre)
    solveLowerInPlace(matrix, n, n, this.weights)
    solveUpperInPlace(matrix, n, n, this.weights)
  }

  /** Mean score at a point of the stretched plane. */
  at(pt: number, qt: number): number {
    const { p, q } = this.sites
    covariancesInto(this.kind, this.shared, pt, qt, p, q, p.length, this.right, 0)
    return this.centre + dot(this.weights, 0, this.right, 0, p.length)
  }
}
