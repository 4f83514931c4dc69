/**
 * The field of a day with given parameters: what a gauge at each place would have caught. Parameters are kept apart so
 * that one changed amount (what if?) costs one pass, not a new fit.
 */
import { ScienceError } from '../error.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { checkDay, type DayAmounts, type FieldTargets, type FieldValues, finestStepMm } from './fieldDay.ts'
import type { FieldParams } from './fieldParams.ts'
import { findSites } from './findSites.ts'
import { lookEverywhere } from './lookEverywhere.ts'
import { amountOfScore, dryChanceOf, meanAmountMm, tenthScore } from './rainOfScore.ts'
import { dryScore } from './scores.ts'

/**
 * @param gauges   n gauges
 * @param day      their amounts, n each
 * @param targets  m places on the gauges' plane
 * @returns see FieldValues
 * @throws {ScienceError} SHAPES_DIFFER
 * @remarks Time O(n³ + m n) up to 700 gauges, with about m / 16 · 48³ / 6 + m · 48² / 2 for the spread; beyond, local alone.
 */
export function fieldWith(params: FieldParams, gauges: GaugeSet, day: DayAmounts, targets: FieldTargets): FieldValues {
  checkDay(gauges, day)
  const m = targets.xM.length
  if (targets.yM.length !== m || (targets.usual && targets.usual.length !== m))
    throw new ScienceError(
      'SHAPES_DIFFER',
      `targets have ${m} x, ${targets.yM.length} y and ${targets.usual?.length ?? m} usual`,
    )
  const out: FieldValues = {
    meanMm: new Float64Array(m).fill(Number.NaN),
    p10Mm: new Float64Array(m).fill(Number.NaN),
    p50Mm: new Float64Array(m).fill(Number.NaN),
    p90Mm: new Float64Array(m).fill(Number.NaN),
    dryChance: new Float64Array(m).fill(Number.NaN),
  }
  const sites = findSites(gauges, day, params)
  if (sites.count === 0) return out
  const halfStepMm = 0.5 * finestStepMm(day)
  const plainDry = dryScore(params, halfStepMm, 1)
  lookEverywhere(params, sites, targets, (t, mean, variance) => {
    const usual = targets.usual?.[t] ?? 1
    const dry = usual === 1 ? plainDry : dryScore(params, halfStepMm, usual)
    const sd = Math.sqrt(variance)
    out.meanMm[t] = usual * meanAmountMm(params, mean, variance, dry)
    out.p10Mm[t] = usual * amountOfScore(params, mean - tenthScore * sd, dry)
    out.p50Mm[t] = usual * amountOfScore(params, mean, dry)
    out.p90Mm[t] = usual * amountOfScore(params, mean + tenthScore * sd, dry)
    out.dryChance[t] = dryChanceOf(mean, variance, dry)
  })
  return out
}
