/** Any quantiles of what a gauge at each place would have caught. */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { normalQuantile } from '../stats/normalQuantile.ts'
import { checkDay, type DayAmounts, type FieldTargets, finestStepMm } from './fieldDay.ts'
import type { FieldParams } from './fieldParams.ts'
import { findSites } from './findSites.ts'
import { lookEverywhere } from './lookEverywhere.ts'
import { amountOfScore } from './rainOfScore.ts'
import { dryScore } from './scores.ts'

/**
 * @param levels  k shares, 0 to 1
 * @returns mm, quantile of level l at place t at index t * k + l; NaN throughout where no gauge has a reading
 * @throws {ScienceError} SHAPES_DIFFER
 */
export function fieldQuantiles(
  params: FieldParams,
  gauges: GaugeSet,
  day: DayAmounts,
  targets: FieldTargets,
  levels: readonly number[],
): Float64Array {
  checkDay(gauges, day)
  const k = levels.length
  const out = new Float64Array(targets.xM.length * k).fill(Number.NaN)
  const sites = findSites(gauges, day, params)
  if (sites.count === 0) return out
  const halfStepMm = 0.5 * finestStepMm(day)
  const scores = levels.map(normalQuantile)
  lookEverywhere(params, sites, targets, (t, mean, variance) => {
    const usual = targets.usual?.[t] ?? 1
    const dry = dryScore(params, halfStepMm, usual)
    const sd = Math.sqrt(variance)
    for (let l = 0; l < k; l++) out[t * k + l] = usual * amountOfScore(params, mean + scores[l]! * sd, dry)
  })
  return out
}
