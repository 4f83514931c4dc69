import type { NeighbourEvidence } from '../mistakes/finding.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import type { LatentTable } from './latentTable.ts'
import type { Neighbourhood } from './neighbourhood.ts'

/** Shares of the neighbouring reports in one expectation: absolute weights of its kriging system, scaled to sum 1. */
export function neighbourWeights(
  latent: LatentTable,
  hood: Neighbourhood,
  gauges: GaugeSet,
  row: number,
  gauge: number,
  most: number,
  sameMorning: boolean,
): NeighbourEvidence[] {
  const { table } = latent
  const n = table.gaugeCount
  const chosen: { c: number; j: number; at: number }[] = []
  for (let c = 0; c < hood.size && chosen.length < most; c++) {
    const j = hood.gauge[gauge * hood.size + c]!
    if (j < 0) break
    const day = row + hood.lagDays[gauge * hood.size + c]!
    if (day < 0 || day >= table.dayCount || (sameMorning && day > row)) continue
    const at = day * n + j
    if (latent.sitePrecision[at]! > 1e-9) chosen.push({ c, j, at })
  }
  const k = chosen.length
  const system = Array.from({ length: k }, (_, a) => {
    const one = chosen[a]!
    const line = Float64Array.from(chosen, (other) => hood.among[(gauge * hood.size + one.c) * hood.size + other.c]!)
    line[a] = 1.0001 + 1 / latent.sitePrecision[one.at]!
    return line
  })
  const weights = solve(
    system,
    Float64Array.from(chosen, (one) => hood.withGauge[gauge * hood.size + one.c]!),
  )
  const total = weights.reduce((sum, w) => sum + Math.abs(w), 0) || 1
  return chosen
    .map(({ j, at }, a) => ({
      gauge: j,
      distanceM: Math.hypot(gauges.xM[gauge]! - gauges.xM[j]!, gauges.yM[gauge]! - gauges.yM[j]!),
      day: table.firstDay + Math.floor(at / n),
      amountMm: table.spanDays[at] === 1 ? table.amountMm[at]! : Number.NaN,
      isTrace: table.isTrace[at] === 1,
      weight: Math.abs(weights[a]!) / total,
      believed: latent.stands[at]!,
    }))
    .sort((a, b) => b.weight - a.weight)
}

/** Gauss elimination of a small positive definite system; in place. */
function solve(system: Float64Array[], right: Float64Array): Float64Array {
  const k = right.length
  for (let a = 0; a < k; a++) {
    for (let b = a + 1; b < k; b++) {
      const f = system[b]![a]! / system[a]![a]!
      for (let c = a; c < k; c++) system[b]![c]! -= f * system[a]![c]!
      right[b]! -= f * right[a]!
    }
  }
  for (let a = k - 1; a >= 0; a--) {
    for (let c = a + 1; c < k; c++) right[a]! -= system[a]![c]! * right[c]!
    right[a]! /= system[a]![a]!
  }
  return right
}
