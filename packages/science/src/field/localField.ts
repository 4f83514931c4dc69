/**
 * The latent field around one place, from a set of gauges with their sites: their covariances factored once, then as
 * many points near by as wanted. All in standard deviations of the scores, on the stretched plane.
 */
import { dot, factorRowInPlace, solveLowerInPlace } from '../krige/cholesky.ts'
import { type FieldParams, leastVariance, meanPriorVariance } from './fieldParams.ts'
import { covariancesInto } from './warp.ts'

/** Gauges with a reading: places on the stretched plane, and what each says of its own score. */
export interface Sites {
  p: Float64Array
  q: Float64Array
  mean: Float64Array
  variance: Float64Array
}

export class LocalField {
  mean = 0
  /** Of a new gauge's score, nugget included. */
  variance = 0
  private readonly sites: Sites
  private readonly kind: FieldParams['kind']
  private readonly shared: number
  private readonly centre: number
  private readonly capacity: number
  private readonly factor: Float64Array
  private readonly values: Float64Array
  private readonly right: Float64Array
  private readonly p: Float64Array
  private readonly q: Float64Array
  private count = 0

  constructor(sites: Sites, params: FieldParams, capacity: number) {
    this.sites = sites
    this.kind = params.kind
    this.shared = 1 - params.nuggetShare
    this.centre = params.meanCentre / params.sd
    this.capacity = capacity
    this.factor = new Float64Array(capacity * capacity)
    this.values = new Float64Array(capacity)
    this.right = new Float64Array(capacity)
    this.p = new Float64Array(capacity)
    this.q = new Float64Array(capacity)
  }

  /** Take the first `count` of the listed gauges; `except` and gauges that say nothing yet are passed over. */
  gather(which: Int32Array, count: number, except = -1): void {
    const { sites, factor, values, capacity, p, q } = this
    let k = 0
    for (let c = 0; c < count; c++) {
      const j = which[c]!
      const own = sites.variance[j]!
      if (j === except || !(own < 1e5)) continue
      const pj = sites.p[j]!
      const qj = sites.q[j]!
      p[k] = pj
      q[k] = qj
      const row = k * capacity
      covariancesInto(this.kind, this.shared, pj, qj, p, q, k, factor, row)
      factorRowInPlace(factor, k, capacity, row)
      const pivot = 1 + meanPriorVariance + own + leastVariance - dot(factor, row, factor, row, k)
      const inverse = 1 / Math.sqrt(Math.max(leastVariance, pivot))
      factor[row + k] = inverse
      values[k] = (sites.mean[j]! - this.centre - dot(factor, row, values, 0, k)) * inverse
      k++
    }
    this.count = k
  }

  /** Set `mean` and `variance` at a point of the stretched plane. */
  look(pt: number, qt: number): void {
    const { factor, values, capacity, right, p, q, count } = this
    covariancesInto(this.kind, this.shared, pt, qt, p, q, count, right, 0)
    solveLowerInPlace(factor, count, capacity, right)
    let mean = this.centre
    let explained = 0
    for (let i = 0; i < count; i++) {
      const r = right[i]!
      mean += r * values[i]!
      explained += r * r
    }
    this.mean = mean
    this.variance = Math.max(leastVariance, 1 + meanPriorVariance - explained)
  }
}
