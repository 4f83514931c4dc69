/** The rain field of one observing day: parameters fitted to the day, then what a gauge at each place would catch. */
import type { GaugeSet } from '../network/gaugeSet.ts'
import type { DayAmounts, FieldTargets, FieldValues } from './fieldDay.ts'
import type { FieldParams } from './fieldParams.ts'
import { fieldWith } from './fieldWith.ts'
import { type FieldPrior, fitField } from './fitField.ts'

export interface DayField extends FieldValues {
  params: FieldParams
}

/**
 * @param prior  opinions to replace the usual ones, such as a range known from the network's history
 * @throws {ScienceError} SHAPES_DIFFER. No readings give NaN everywhere, not an error.
 */
export function fieldForDay(
  gauges: GaugeSet,
  day: DayAmounts,
  targets: FieldTargets,
  prior: Partial<FieldPrior> = {},
): DayField {
  const params = fitField(gauges, day, prior)
  return { ...fieldWith(params, gauges, day, targets), params }
}
