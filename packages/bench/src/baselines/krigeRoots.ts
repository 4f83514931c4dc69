/**
 * Ordinary kriging of square roots, leaving out the gauge itself, from its nearest gauges that reported that day. Only
 * to be compared with. Weights do not depend on the amounts, so that each gauge's system is solved once for every set
 * of neighbours that occurs.
 */
import type { DailyTable, GaugeSet } from '@gaugewright/science'
import { nearestGauges } from './nearestGauges.ts'
import { type RootVariogram, semivariance } from './rootVariogram.ts'

export interface KrigedRoots {
  /** Per cell of the table; NaN where fewer than three neighbours reported. Roots of mm, not clipped at 0. */
  meanRoot: Float64Array
  /** Kriging variance in the units of the variogram (a factor is fitted later). */
  relativeVariance: Float64Array
}

export function krigeRoots(
  gauges: GaugeSet,
  table: DailyTable,
  variogram: RootVariogram,
  neighbourCount: number,
): KrigedRoots {
  const n = table.gaugeCount
  const { order } = nearestGauges(gauges)
  const meanRoot = new Float64Array(table.amountMm.length).fill(Number.NaN)
  const relativeVariance = new Float64Array(table.amountMm.length).fill(Number.NaN)
  const neighbours = new Int32Array(neighbourCount)
  const roots = table.amountMm.map(Math.sqrt)
  for (let gauge = 0; gauge < n; gauge++) {
    const solved = new Map<string, Float64Array>()
    for (let row = 0; row < table.dayCount; row++) {
      let count = 0
      for (let r = 0; r < n - 1 && count < neighbourCount; r++) {
        const other = order[gauge * (n - 1) + r]!
        if (!Number.isNaN(roots[row * n + other]!)) neighbours[count++] = other
      }
      if (count < 3) continue
      const key = neighbours.subarray(0, count).join(' ')
      let weights = solved.get(key)
      if (weights === undefined) {
        weights = solveWeights(gauges, gauge, neighbours.subarray(0, count), variogram)
        solved.set(key, weights)
      }
      let estimate = 0
      for (let i = 0; i < count; i++) estimate += weights[i]! * roots[row * n + neighbours[i]!]!
      meanRoot[row * n + gauge] = estimate
      relativeVariance[row * n + gauge] = Math.max(1e-6, weights[count]!)
    }
  }
  return { meanRoot, relativeVariance }
}

/** @returns the weights and, after them, the kriging variance */
function solveWeights(
  gauges: GaugeSet,
  target: number,
  neighbours: Int32Array,
  variogram: RootVariogram,
): Float64Array {
  const count = neighbours.length
  const size = count + 1
  const matrix = new Float64Array(size * size)
  const right = new Float64Array(size)
  const gamma = (a: number, b: number): number =>
    semivariance(variogram, Math.hypot(gauges.xM[a]! - gauges.xM[b]!, gauges.yM[a]! - gauges.yM[b]!))
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < i; j++) {
      const between = Math.max(gamma(neighbours[i]!, neighbours[j]!), variogram.nugget)
      matrix[i * size + j] = between
      matrix[j * size + i] = between
    }
    matrix[i * size + count] = 1
    matrix[count * size + i] = 1
    right[i] = Math.max(gamma(target, neighbours[i]!), variogram.nugget)
    // A touch on the diagonal keeps two gauges at one spot, with no nugget, from being singular.
    matrix[i * size + i] = -1e-6
  }
  right[count] = 1
  const solution = eliminate(matrix, Float64Array.from(right), size)
  let variance = solution[count]!
  for (let i = 0; i < count; i++) variance += solution[i]! * right[i]!
  solution[count] = variance
  return solution
}

/** Gaussian elimination with partial pivoting; both inputs are overwritten. */
function eliminate(a: Float64Array, b: Float64Array, size: number): Float64Array {
  for (let k = 0; k < size; k++) {
    let pivot = k
    for (let i = k + 1; i < size; i++) if (Math.abs(a[i * size + k]!) > Math.abs(a[pivot * size + k]!)) pivot = i
    if (pivot !== k) {
      for (let j = k; j < size; j++) {
        const held = a[k * size + j]!
        a[k * size + j] = a[pivot * size + j]!
        a[pivot * size + j] = held
      }
      const held = b[k]!
      b[k] = b[pivot]!
      b[pivot] = held
    }
    const inverse = 1 / a[k * size + k]!
    for (let i = k + 1; i < size; i++) {
      const factor = a[i * size + k]! * inverse
      if (factor === 0) continue
      for (let j = k + 1; j < size; j++) a[i * size + j] = a[i * size + j]! - factor * a[k * size + j]!
      b[i] = b[i]! - factor * b[k]!
    }
  }
  for (let k = size - 1; k >= 0; k--) {
    let sum = b[k]!
    for (let j = k + 1; j < size; j++) sum -= a[k * size + j]! * b[j]!
    b[k] = sum / a[k * size + k]!
  }
  return b
}
