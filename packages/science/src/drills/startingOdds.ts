/**
 * How drills move the odds of mistakes that an observer begins with. Our own choice, not a published one: a drill is no
 * reading. The share missed is shrunk toward a usual share (as if `before` drills had been answered as people usually do);
 * its ratio to the usual share counts by its square root, within a half and twice; and it fades as real readings come, since
 * these tell more: with m readings the factor is raised to the power fade / (fade + m). It multiplies the gauge's share of
 * mistakes (Model.mistakeFactor), on which decisions then go on.
 */
import { ScienceError } from '../error.ts'
import type { Model } from '../model/model.ts'

const USUAL_MISSED = 0.15
const BEFORE_DRILLS = 20
const FADE_READINGS = 30
const MOST_FACTOR = 2
/** Of an observer who was asked to pass and has not yet. */
const UNTRAINED_FACTOR = 1.5

/** @returns a factor on the usual share of mistakes, 1 where nothing was answered */
export function drillFactor(missed: number, answered: number): number {
  const share = (USUAL_MISSED * BEFORE_DRILLS + missed) / (BEFORE_DRILLS + answered)
  const factor = Math.sqrt(share / USUAL_MISSED)
  return Math.min(MOST_FACTOR, Math.max(1 / MOST_FACTOR, factor))
}

export function untrainedFactor(): number {
  return UNTRAINED_FACTOR
}

/**
 * @param factors   from drills, 1 for those who did none; Float64Array of the model's gauges
 * @param readings  of each gauge in the record that the model learned from
 * @returns the model itself where no factor differs from 1
 * @throws {ScienceError} SHAPES_DIFFER
 */
export function withDrills(model: Model, factors: ArrayLike<number>, readings: ArrayLike<number>): Model {
  const n = model.mistakeFactor.length
  if (factors.length !== n || readings.length !== n) {
    throw new ScienceError(
      'SHAPES_DIFFER',
      `${factors.length} factors, ${readings.length} counts, a model of ${n} gauges`,
    )
  }
  const mistakeFactor = model.mistakeFactor.slice()
  let isMoved = false
  for (let g = 0; g < n; g++) {
    if (factors[g] === 1) continue
    mistakeFactor[g] = mistakeFactor[g]! * factors[g]! ** (FADE_READINGS / (FADE_READINGS + readings[g]!))
    isMoved = true
  }
  return isMoved ? { ...model, mistakeFactor } : model
}
