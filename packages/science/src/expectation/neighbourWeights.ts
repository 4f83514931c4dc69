import { ScienceError } from '../error.ts'
import { factorInPlace, solveLowerInPlace, solveUpperInPlace } from '../krige/cholesky.ts'
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
  const system = new Float64Array(k * k)
  const weights = Float64Array.from(chosen, (one) => hood.withGauge[gauge * hood.size + one.c]!)
  chosen.forEach((one, a) => {
    const line = (gauge * hood.size + one.c) * hood.size
    for (let b = 0; b < a; b++) system[a * k + b] = hood.among[line + chosen[b]!.c]!
    system[a * k + a] = 1.0001 + 1 / latent.sitePrecision[one.at]!
  })
  const singularRow = factorInPlace(system, k, k)
  if (singularRow >= 0)
    throw new ScienceError('SYSTEM_SINGULAR', `neighbour ${singularRow} of gauge ${gauge} repeats those before it`)
  solveLowerInPlace(system, k, k, weights)
  solveUpperInPlace(system, k, k, weights)
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
