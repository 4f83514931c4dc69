import { isMultiple } from '../climate/resolution.ts'
import type { DailyTable } from '../network/dailyTable.ts'

/** What the digits of one gauge's wet daily readings look like, in steps of the gauge. */
export interface GaugeDigits {
  /** mm */
  stepMm: number
  wet: number
  /** Wet readings off the gauge's own steps. */
  offSteps: number
  /** Readings of five steps or more, how many of them are multiples of five, and their mean in steps. */
  fromFive: number
  fives: number
  meanFromFive: number
  /** Last digits 0…9 of the readings of `digitsFromSteps` or more, their number, and their mean in steps. */
  lastDigit: Int32Array
  withDigits: number
  meanWithDigits: number
}

/**
 * Last digits are looked at from 13 steps on: 13 to 17 are what is rounded to 15, 18 to 22 what is rounded to 20, so that
 * no round figure takes in smaller amounts that do not count.
 */
export const digitsFromSteps = 13

/** @param resolutionMm  step of each gauge; Float64Array(gaugeCount) */
export function digitsOf(table: DailyTable, resolutionMm: Float64Array): GaugeDigits[] {
  const n = table.gaugeCount
  const out = Array.from(
    { length: n },
    (_, g): GaugeDigits => ({
      stepMm: resolutionMm[g]!,
      wet: 0,
      offSteps: 0,
      fromFive: 0,
      fives: 0,
      meanFromFive: 0,
      lastDigit: new Int32Array(10),
      withDigits: 0,
      meanWithDigits: 0,
    }),
  )
  for (let i = 0; i < table.amountMm.length; i++) {
    const amountMm = table.amountMm[i]!
    if (table.spanDays[i] !== 1 || !(amountMm > 0)) continue
    const digits = out[i % n]!
    digits.wet++
    if (!isMultiple(amountMm, digits.stepMm)) {
      digits.offSteps++
      continue
    }
    const steps = Math.round(amountMm / digits.stepMm)
    if (steps >= 5) {
      digits.fromFive++
      digits.meanFromFive += steps
      if (steps % 5 === 0) digits.fives++
    }
    if (steps >= digitsFromSteps) {
      digits.withDigits++
      digits.meanWithDigits += steps
      digits.lastDigit[steps % 10]! += 1
    }
  }
  for (const digits of out) {
    digits.meanFromFive /= Math.max(1, digits.fromFive)
    digits.meanWithDigits /= Math.max(1, digits.withDigits)
  }
  return out
}

/**
 * Share of multiples of `every` among amounts of `every` steps or more, were the amounts spread geometrically (the
 * exponential distribution in whole steps) with their own mean and nobody rounded. 0.212 for fives where all amounts
 * have a mean of 35 steps, 0.221 for 20.
 * @param meanSteps  of those amounts
 */
export function unroundedShare(every: number, meanSteps: number): number {
  // Geometric from `every` on: the mean above it is q / (1 - q).
  const above = Math.max(0.1, meanSteps - every)
  const q = above / (1 + above)
  return (1 - q) / (1 - q ** every)
}

/**
 * Shares of the last digits 0…9 of amounts of `digitsFromSteps` or more, spread in the same way.
 * @param meanSteps  of those amounts
 */
export function unroundedDigits(meanSteps: number): number[] {
  const above = Math.max(0.1, meanSteps - digitsFromSteps)
  const q = above / (1 + above)
  const first = (1 - q) / (1 - q ** 10)
  return Array.from({ length: 10 }, (_, digit) => first * q ** ((digit - digitsFromSteps + 20) % 10))
}
