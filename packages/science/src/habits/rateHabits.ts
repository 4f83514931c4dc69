/**
 * Habits that are counts against what is usual on the same days: the gauge's factor is gamma-Poisson, shrunk toward the
 * network by as much as the gauges of the network are alike [Efron2016].
 */
import { fitGammaPoisson, type VariationPrior } from '../stats/gammaPoisson.ts'
import { incompleteGammaAbove } from '../stats/incompleteGamma.ts'
import type { HabitKind, HabitSeen } from './habit.ts'

export interface RateSeen {
  kind: HabitKind
  /** Events and what was expected of them, by gauge, in any one unit; counts may be sums of odds. */
  events: Float64Array
  exposure: Float64Array
  readings: Float64Array
  /** The factor beyond which it matters; a habit of too few where it is below 1. */
  matters: number
}

const enoughReadings = 60
/** Observers differ about as much as their rate itself [Greenwood1920]. */
const variationPrior: VariationPrior = { middle: 0.8, logSd: 0.5 }

/** By gauge; null where it has too few readings, all null where nothing was counted. */
export function rateHabits(seen: RateSeen): (HabitSeen | null)[] {
  const n = seen.events.length
  const fit = fitGammaPoisson(seen.events, seen.exposure, variationPrior)
  return Array.from({ length: n }, (_, g) => {
    if (fit === null || seen.readings[g]! < enoughReadings || !(seen.exposure[g]! > 0)) return null
    const shape = fit.shape + seen.events[g]!
    const rate = fit.shape + fit.rate * seen.exposure[g]!
    const above = incompleteGammaAbove(shape, seen.matters * rate)
    const value = shape / rate
    const isOfTooFew = seen.matters < 1
    return {
      kind: seen.kind,
      value,
      low: gammaQuantile(shape, 0.1) / rate,
      high: gammaQuantile(shape, 0.9) / rate,
      sure: isOfTooFew ? 1 - above : above,
      size: Math.max(0, Math.min(1, isOfTooFew ? 1 - value : 1 - 1 / value)),
      readings: seen.readings[g]!,
    }
  })
}

/** Quantile of the gamma distribution of unit scale, by halving; to a thousandth of the shape. */
function gammaQuantile(shape: number, level: number): number {
  let low = 0
  let high = shape + 8 * Math.sqrt(shape) + 8
  while (high - low > 0.001 * shape) {
    const middle = (low + high) / 2
    if (incompleteGammaAbove(shape, middle) > 1 - level) low = middle
    else high = middle
  }
  return (low + high) / 2
}
