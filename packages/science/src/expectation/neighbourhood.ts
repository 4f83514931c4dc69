/**
 * For each gauge the reports that tell most about its own: the same day's and, where gauges date their days
 * differently, the day's before and after. Their correlations with the gauge and with one another are worked out once.
 */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { type Correlation, correlationByDistance, correlationByShift } from './correlation.ts'
import { nearestGauges } from './nearPairs.ts'

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
  const rho = distanceTable(gauges, correlation)
  const shift = shiftTable(correlation)
  const near = nearestGauges(gauges, Math.min(n - 1, size * 2))
  const out: Neighbourhood = {
    size,
    gauge: new Int32Array(n * size).fill(-1),
    lagDays: new Int8Array(n * size),
    withGauge: new Float32Array(n * size),
    among: new Float32Array(n * size * size),
  }
  const { fit, offsetDays } = correlation
  for (let g = 0; g < n; g++) {
    const list: { j: number; lag: number; value: number }[] = []
    for (const j of near[g]!) {
      const base = fit[g]! * fit[j]! * rho(g, j)
      for (let lag = -1; lag <= 1; lag++) {
        const value = base * shift(offsetDays[g]! - offsetDays[j]! - lag)
        if (lag !== 0 && value < 0.45 * base) continue
        if (value > leastCorrelation) list.push({ j, lag, value })
      }
    }
    list.sort((a, b) => b.value - a.value || a.j - b.j || a.lag - b.lag)
    const count = Math.min(size, list.length)
    for (let a = 0; a < count; a++) {
      const one = list[a]!
      out.gauge[g * size + a] = one.j
      out.lagDays[g * size + a] = one.lag
      out.withGauge[g * size + a] = one.value
      const row = (g * size + a) * size
      out.among[row + a] = 1
      for (let b = 0; b < a; b++) {
        const other = list[b]!
        const apart = shift(offsetDays[one.j]! + one.lag - offsetDays[other.j]! - other.lag)
        const between = one.j === other.j ? apart : fit[one.j]! * fit[other.j]! * rho(one.j, other.j) * apart
        out.among[row + b] = between
        out.among[(g * size + b) * size + a] = between
      }
    }
  }
  return out
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
