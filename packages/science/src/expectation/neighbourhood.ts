/**
 * For each gauge the reports that tell most about its own: the same day's and, where gauges date their days
 * differently, the day's before and after. Their correlations with the gauge and with one another are worked out once.
 */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { nearestGauges } from '../space/nearestGauges.ts'
import { type Correlation, correlationByDistance, correlationByShift, pairLags } from './correlation.ts'

export interface Neighbourhood {
  /** Reports considered for each gauge. */
  size: number
  /** Neighbouring gauge and day lag of candidate c of gauge g; index g * size + c; gauge -1 where there are fewer. */
  gauge: Int32Array
  lagDays: Int8Array
  /** Correlation of the candidate with the gauge; index g * size + c. */
  withGauge: Float32Array
  /** Correlation of candidates a and b of gauge g; index (g * size + a) * size + b. */
  among: Float32Array
}

/** Least correlation for which a report is worth having. */
const leastCorrelation = 0.03

export function buildNeighbourhood(gauges: GaugeSet, correlation: Correlation, size: number): Neighbourhood {
  const n = gauges.ids.length
  const between = reportCorrelation(gauges, correlation)
  const near = nearestGauges(gauges, Math.min(n - 1, size + 16))
  const out: Neighbourhood = {
    size,
    gauge: new Int32Array(n * size).fill(-1),
    lagDays: new Int8Array(n * size),
    withGauge: new Float32Array(n * size),
    among: new Float32Array(n * size * size),
  }
  const own = new Float64Array((size + 1) * (size + 1))
  const formula = new Float64Array((size + 1) * (size + 1))
  for (let g = 0; g < n; g++) {
    const list: Candidate[] = []
    for (const j of near[g]!) {
      const same = between.blended(g, j, 0)
      for (let lag = -1; lag <= 1; lag++) {
        const value = lag === 0 ? same : between.blended(g, j, lag)
        if (lag !== 0 && value < 0.45 * same) continue
        if (value > leastCorrelation) list.push({ gauge: j, lag, value })
      }
    }
    list.sort((a, b) => b.value - a.value || a.gauge - b.gauge || a.lag - b.lag)
    const count = Math.min(size, list.length)
    // Row and column 0 are the gauge itself, so that its own correlations are kept valid with the rest.
    const at = [{ gauge: g, lag: 0, value: 1 }, ...list.slice(0, count)]
    let isAnySeen = false
    for (let a = 0; a <= count; a++) {
      for (let b = 0; b < a; b++) {
        const one = at[a]!
        const other = at[b]!
        const k = a * (size + 1) + b
        const lag = other.lag - one.lag
        const seen = between.seen(one.gauge, other.gauge, lag)
        formula[k] = between.formula(one.gauge, other.gauge, lag)
        own[k] = Number.isNaN(seen) ? formula[k]! : seen
        if (!Number.isNaN(seen)) isAnySeen = true
      }
    }
    const trust = isAnySeen ? validBlend(own, formula, count + 1, size + 1) : 0
    for (let a = 1; a <= count; a++) {
      const c = a - 1
      out.gauge[g * size + c] = at[a]!.gauge
      out.lagDays[g * size + c] = at[a]!.lag
      const k = a * (size + 1)
      out.withGauge[g * size + c] = trust * own[k]! + (1 - trust) * formula[k]!
      out.among[(g * size + c) * size + c] = 1
      for (let b = 1; b < a; b++) {
        const value = trust * own[k + b]! + (1 - trust) * formula[k + b]!
        out.among[(g * size + c) * size + b - 1] = value
        out.among[(g * size + b - 1) * size + c] = value
      }
    }
  }
  return out
}

interface Candidate {
  gauge: number
  lag: number
  value: number
}

/** Least part of a variance that may be left unexplained by the reports before it; keeps every system well posed. */
const leastPivot = 0.02

/** Largest of a few weights of the pairs' own correlations for which the blend with the formula is a valid correlation. */
export function validBlend(own: Float64Array, formula: Float64Array, count: number, stride: number): number {
  for (const trust of [1, 0.85, 0.7, 0.5, 0.3]) if (isValid(own, formula, trust, count, stride)) return trust
  return 0
}

const factor = new Float64Array(72 * 72)

function isValid(own: Float64Array, formula: Float64Array, trust: number, count: number, stride: number): boolean {
  for (let a = count - 1, r = 0; a >= 0; a--, r++) {
    // From the last candidate to the gauge itself, so that its own remaining variance is the last pivot.
    for (let b = count - 1, c = 0; b > a; b--, c++) {
      const k = b * stride + a
      let sum = trust * own[k]! + (1 - trust) * formula[k]!
      for (let e = 0; e < c; e++) sum -= factor[r * 72 + e]! * factor[c * 72 + e]!
      factor[r * 72 + c] = sum / factor[c * 72 + c]!
    }
    let pivot = 1
    for (let e = 0; e < r; e++) pivot -= factor[r * 72 + e]! ** 2
    if (!(pivot > leastPivot)) return false
    factor[r * 72 + r] = Math.sqrt(pivot)
  }
  return true
}

/**
 * Correlation of gauge a's report with gauge b's `lag` days later: by formula, as the pair's history blended with the
 * formula has it (NaN without one), and the latter where there is one, else the former.
 */
export function reportCorrelation(gauges: GaugeSet, correlation: Correlation) {
  const n = gauges.ids.length
  const rho = distanceTable(gauges, correlation)
  const shift = shiftTable(correlation)
  const { fit, offsetDays, pairs } = correlation
  const pairAt = new Map<number, number>()
  for (let p = 0; p < pairs.i.length; p++) pairAt.set(pairs.i[p]! * n + pairs.j[p]!, p)
  const formula = (a: number, b: number, lag: number): number => {
    if (a === b) return shift(lag)
    return fit[a]! * fit[b]! * rho(a, b) * shift(offsetDays[a]! - offsetDays[b]! - lag)
  }
  const seen = (a: number, b: number, lag: number): number => {
    if (pairAt.size === 0 || a === b || Math.abs(lag) > pairLags) return Number.NaN
    const p = pairAt.get(a < b ? a * n + b : b * n + a)
    return p === undefined ? Number.NaN : pairs.byLag[p * (2 * pairLags + 1) + (a < b ? lag : -lag) + pairLags]!
  }
  const blended = (a: number, b: number, lag: number): number => {
    const value = seen(a, b, lag)
    return Number.isNaN(value) ? formula(a, b, lag) : value
  }
  return { formula, seen, blended }
}

/** Correlation by distance through a table of 2048 steps: no exponential per pair. */
export function distanceTable(gauges: GaugeSet, correlation: Correlation): (i: number, j: number) => number {
  const steps = 2048
  const farM = 4 * correlation.longRangeM
  const table = new Float64Array(steps + 2)
  // Even in the square root of distance: fine where correlation changes fast.
  for (let k = 0; k < steps + 2; k++) table[k] = correlationByDistance(correlation, farM * (k / steps) ** 2)
  const { xM, yM } = gauges
  return (i, j) => {
    const dx = xM[i]! - xM[j]!
    const dy = yM[i]! - yM[j]!
    const position = Math.sqrt(Math.sqrt(dx * dx + dy * dy) / farM) * steps
    if (position >= steps) return table[steps]!
    const k = position | 0
    return table[k]! + (position - k) * (table[k + 1]! - table[k]!)
  }
}

function shiftTable(correlation: Correlation): (shiftDays: number) => number {
  const table = new Float64Array(8 * 8 + 1)
  for (let k = 0; k < table.length; k++) table[k] = correlationByShift(correlation, k / 8)
  return (shiftDays) => table[Math.min(64, Math.round(Math.abs(shiftDays) * 8))]!
}
