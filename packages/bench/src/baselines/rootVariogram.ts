/**
 * One variogram of square roots for a network: semivariance of sqrt(mm) against distance, pooled over its wet days.
 * Kriging needs it only up to a factor; how rough a day is enters elsewhere (rootKriging.ts).
 */
import type { DailyTable, GaugeSet } from '@gaugewright/science'

export type RootVariogramKind = 'exponential' | 'spherical'

/** In mm (the squares of roots of mm). Semivariance is 0 at lag 0 and jumps by the nugget just above it. */
export interface RootVariogram {
  kind: RootVariogramKind
  nugget: number
  partialSill: number
  /** The length in the exponent (exponential) or where the sill is reached (spherical), in metres. */
  lengthM: number
}

export function semivariance(variogram: RootVariogram, lagM: number): number {
  if (lagM <= 0) return 0
  const ratio = lagM / variogram.lengthM
  const rise =
    variogram.kind === 'exponential' ? 1 - Math.exp(-ratio) : ratio >= 1 ? 1 : 1.5 * ratio - 0.5 * ratio * ratio * ratio
  return variogram.nugget + variogram.partialSill * rise
}

const lagCount = 30

/**
 * Weighted least squares with weights pairs / model² [Cressie1985], by a search over lengths and, at each, the two
 * linear parts. Pairs up to a third of the largest distance are used.
 */
export function fitRootVariogram(
  gauges: GaugeSet,
  table: DailyTable,
  days: { fromDay: number; toDay: number },
  kind: RootVariogramKind,
): RootVariogram {
  const lags = empiricalLags(gauges, table, days)
  let best: RootVariogram = { kind, nugget: 0.1, partialSill: 0.9, lengthM: lags.reachM / 2 }
  let bestLoss = Number.POSITIVE_INFINITY
  for (let step = 0; step < 40; step++) {
    const lengthM = lags.reachM * 0.03 * 1.12 ** step
    for (let share = 0; share <= 20; share++) {
      const shape: RootVariogram = { kind, nugget: share / 20, partialSill: 1 - share / 20, lengthM }
      const rise = lags.meanM.map((lagM) => semivariance(shape, lagM))
      let upper = 0
      let lower = 0
      for (let b = 0; b < lagCount; b++) {
        if (lags.pairs[b] === 0) continue
        const ratio = lags.semivariance[b]! / rise[b]!
        upper += lags.pairs[b]! * ratio * ratio
        lower += lags.pairs[b]! * ratio
      }
      const scale = upper / lower
      let loss = 0
      for (let b = 0; b < lagCount; b++) {
        if (lags.pairs[b] === 0) continue
        loss += lags.pairs[b]! * (lags.semivariance[b]! / (scale * rise[b]!) - 1) ** 2
      }
      if (loss >= bestLoss) continue
      bestLoss = loss
      best = { kind, nugget: scale * shape.nugget, partialSill: scale * shape.partialSill, lengthM }
    }
  }
  return best
}

interface EmpiricalLags {
  reachM: number
  meanM: Float64Array
  semivariance: Float64Array
  pairs: Float64Array
}

function empiricalLags(
  gauges: GaugeSet,
  table: DailyTable,
  { fromDay, toDay }: { fromDay: number; toDay: number },
): EmpiricalLags {
  const n = table.gaugeCount
  let widestM = 0
  for (let a = 0; a < n; a++)
    for (let b = 0; b < a; b++)
      widestM = Math.max(widestM, Math.hypot(gauges.xM[a]! - gauges.xM[b]!, gauges.yM[a]! - gauges.yM[b]!))
  const reachM = widestM / 3
  const sums = { lagM: new Float64Array(lagCount), half: new Float64Array(lagCount), pairs: new Float64Array(lagCount) }
  const roots = new Float64Array(n)
  // Every day of a year would be more than enough pairs: large networks and long blocks are thinned evenly.
  const stride = Math.max(1, Math.floor(((toDay - fromDay + 1) * n * n) / 4e7))
  for (let day = fromDay; day <= toDay; day += stride) {
    const reported: number[] = []
    let sum = 0
    let squares = 0
    for (let g = 0; g < n; g++) {
      const amountMm = table.amountMm[(day - table.firstDay) * n + g]!
      if (Number.isNaN(amountMm)) continue
      roots[g] = Math.sqrt(amountMm)
      reported.push(g)
      sum += roots[g]!
      squares += amountMm
    }
    const count = reported.length
    const variance = squares / count - (sum / count) ** 2
    if (count < 10 || sum / count < 0.3 || variance <= 0) continue
    for (let i = 1; i < count; i++) {
      const a = reported[i]!
      for (let j = 0; j < i; j++) {
        const b = reported[j]!
        const lagM = Math.hypot(gauges.xM[a]! - gauges.xM[b]!, gauges.yM[a]! - gauges.yM[b]!)
        if (lagM >= reachM || lagM <= 0) continue
        const bin = Math.floor(Math.sqrt(lagM / reachM) * lagCount)
        sums.lagM[bin] = sums.lagM[bin]! + lagM
        sums.half[bin] = sums.half[bin]! + 0.5 * (roots[a]! - roots[b]!) ** 2
        sums.pairs[bin] = sums.pairs[bin]! + 1
      }
    }
  }
  const mean = (total: Float64Array): Float64Array => total.map((value, bin) => value / Math.max(1, sums.pairs[bin]!))
  return { reachM, meanM: mean(sums.lagM), semivariance: mean(sums.half), pairs: sums.pairs }
}
