import { ScienceError } from '../error.ts'
import { type DecidedCounts, learnRatesFromDecisions } from './learnRatesFromDecisions.ts'
import type { Model } from './model.ts'

/**
 * A learned model that also knows what persons decided. What the record told of each gauge is what is believed before:
 * readings that were amended or set aside stand corrected in the record, so that nothing is counted twice.
 * @param counts  of the model's gauges, in their order
 * @returns the model itself where nobody has decided anything
 * @throws {ScienceError} SHAPES_DIFFER
 */
export function withDecidedRates(model: Model, counts: DecidedCounts): Model {
  const n = model.mistakeFactor.length
  for (const [name, counted] of Object.entries({
    mistaken: counts.mistaken,
    standing: counts.standing,
    passed: counts.passed,
  }))
    if (counted.length !== n)
      throw new ScienceError('SHAPES_DIFFER', `decisions on ${counted.length} gauges (${name}), a model of ${n}`)
  const { factor, share } = learnRatesFromDecisions(counts, model.mistakeFactor)
  const isMoved = factor.some((value, g) => value !== model.mistakeFactor[g]) || share !== model.mistakeShare
  return isMoved ? { ...model, mistakeFactor: factor, mistakeShare: share } : model
}
