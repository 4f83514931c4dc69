/**
 * From the correlation of censored scores (dry days all at their mean score) to that of the full scores below them.
 * With Hermite coefficients a_k of the censored score, corr = Σ a_k² ρ^k / Σ a_k². Source: [Lancaster1957] expansion.
 */
import { normalCdf } from '../stats/normalCdf.ts'

const terms = 12

/** Share of the variance of the censored score in each Hermite term k = 1…12, for a dry threshold. */
function hermiteShares(dryThreshold: number): Float64Array {
  const dryMean = (-Math.exp((-dryThreshold * dryThreshold) / 2) * 0.3989422804014327) / normalCdf(dryThreshold)
  const a = new Float64Array(terms + 1)
  const step = 0.01
  for (let z = -8; z <= 8; z += step) {
    const value = (z < dryThreshold ? dryMean : z) * Math.exp((-z * z) / 2) * 0.3989422804014327 * step
    let previous = 1
    let current = z
    a[1]! += value * current
    for (let k = 2; k <= terms; k++) {
      // Normalised Hermite polynomials: He_k / sqrt(k!)
      const next = (z * current - Math.sqrt(k - 1) * previous) / Math.sqrt(k)
      previous = current
      current = next
      a[k]! += value * current
    }
  }
  let total = 0
  for (let k = 1; k <= terms; k++) {
    a[k] = a[k]! * a[k]!
    total += a[k]!
  }
  for (let k = 1; k <= terms; k++) a[k]! /= total
  return a
}

const cached = new Map<number, Float64Array>()

/** Full correlation (-1 to 0.999) that gives the censored one, for a common dry threshold. */
export function uncensorCorrelation(censored: number, dryThreshold: number): number {
  const key = Math.round(Math.min(2.5, Math.max(-2.5, dryThreshold)) * 10)
  let shares = cached.get(key)
  if (shares === undefined) {
    shares = hermiteShares(key / 10)
    cached.set(key, shares)
  }
  if (censored >= 0.999) return 0.999
  let low = -0.999
  let high = 0.999
  for (let step = 0; step < 30; step++) {
    const mid = (low + high) / 2
    let value = 0
    for (let k = terms; k >= 1; k--) value = (value + shares[k]!) * mid
    if (value < censored) low = mid
    else high = mid
  }
  return (low + high) / 2
}
