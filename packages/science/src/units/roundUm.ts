/**
 * Rounding of whole micrometres to the step that a gauge or a format resolves; halves go up. Integers throughout, so
 * 6.35 mm becomes 6.4 mm and not 6.3 for want of a bit.
 */
import { ScienceError } from '../error.ts'
import type { Unit } from '../reading/reading.ts'

/** Steps of the gauges in use: hundredths of an inch, tenths of a millimetre, and fifths (0.2 mm graduation). */
export const resolutionsUm = { hundredthInch: 254, tenthMm: 100, fifthMm: 200 } as const

/** The step of a gauge whose own is not known: 0.01 in or 0.1 mm. */
export function usualResolutionUm(unit: Unit): number {
  return unit === 'in' ? resolutionsUm.hundredthInch : resolutionsUm.tenthMm
}

/**
 * Nearest multiple of a step, halves up.
 * @param amountUm whole micrometres, at least 0
 * @param stepUm   whole micrometres, above 0
 * @throws {ScienceError} OUT_OF_DOMAIN for a negative or fractional amount or step
 */
export function roundUm(amountUm: number, stepUm: number): number {
  if (!Number.isSafeInteger(amountUm) || amountUm < 0 || !Number.isSafeInteger(stepUm) || stepUm <= 0) {
    throw new ScienceError('OUT_OF_DOMAIN', `cannot round ${amountUm} µm to steps of ${stepUm} µm`)
  }
  const steps = Math.floor(amountUm / stepUm)
  const restUm = amountUm - steps * stepUm
  return (2 * restUm >= stepUm ? steps + 1 : steps) * stepUm
}

/** True when a gauge with this step can show the amount. */
export function isWholeSteps(amountUm: number, stepUm: number): boolean {
  return amountUm % stepUm === 0
}
