import { pairLags } from '../expectation/correlation.ts'
import { normalCdf } from '../stats/normalCdf.ts'
import { type Agreement, withError } from './agreementByLag.ts'
import type { HabitSeen } from './habit.ts'

/** A fit below this share of the middle gauge's is worth a look at the site. */
const poorShare = 0.9
const leastError = 0.01
const z80 = 1.2815515655446004

/**
 * How well a gauge fits its surroundings, beyond what distance says.
 * @param fit     of the gauge in the learned model
 * @param usual   of the middle gauge
 */
export function fitHabit(agreement: Agreement, fit: number, usual: number): HabitSeen | null {
  const best = withError(agreement, (byLag) => Math.max(...byLag.subarray(pairLags - 1, pairLags + 2)))
  if (!(best.value > 0) || Number.isNaN(best.error)) return null
  // The fit is known about as well as the agreement that it was learned from, in proportion.
  const sd = Math.max(leastError, best.error / best.value)
  return {
    kind: 'fits-poorly',
    value: fit,
    low: fit * Math.exp(-z80 * sd),
    high: fit * Math.exp(z80 * sd),
    sure: normalCdf(Math.log((poorShare * usual) / fit) / sd),
    size: Math.max(0, Math.min(1, 1 - fit / usual)),
    readings: agreement.days,
  }
}
