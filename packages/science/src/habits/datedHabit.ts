import { pairLags } from '../expectation/correlation.ts'
import { normalCdf } from '../stats/normalCdf.ts'
import { type Agreement, withError } from './agreementByLag.ts'
import type { HabitSeen } from './habit.ts'

/** An offset from which a gauge's day is another than the network's: about five hours. */
const offsetThatMatters = 0.2
/** Agreement with anything at all below which nothing can be said of dates. */
const leastAgreement = 0.25
const leastError = 0.02
const z80 = 1.2815515655446004

/**
 * By how much of a day a gauge's window runs ahead of the network's: its agreement at the better side against that of
 * its own date, both above the worse side. 0 for a gauge that agrees best, and alike on both sides, on its own date.
 */
export function offsetOf(byLag: Float64Array): number {
  const before = byLag[pairLags - 1]!
  const same = byLag[pairLags]!
  const after = byLag[pairLags + 1]!
  const floor = Math.min(before, after)
  const reach = Math.max(before, after) - floor
  const share = reach / Math.max(0.05, reach + Math.max(0, same - floor))
  return after > before ? share : -share
}

/** @returns null where the gauge agrees with nothing well enough, or the record is too short */
export function datedHabit(agreement: Agreement): HabitSeen | null {
  const best = Math.max(...agreement.byLag.subarray(pairLags - 1, pairLags + 2))
  if (!(best > leastAgreement)) return null
  const { value, error } = withError(agreement, offsetOf)
  if (!Number.isFinite(value) || Number.isNaN(error)) return null
  const sd = Math.max(leastError, error)
  return {
    kind: 'dated',
    value,
    low: value - z80 * sd,
    high: value + z80 * sd,
    sure: normalCdf((Math.abs(value) - offsetThatMatters) / sd),
    size: Math.min(1, Math.abs(value)),
    readings: agreement.days,
  }
}
