/**
 * Rounding, coarse steps and readings between the steps. Round figures are told only beyond the binomial limits of
 * unrounded amounts; the published constants of such tests are not known to us, the limits are worked out [Daly2007].
 */
import { binomialAtLeast } from '../stats/binomial.ts'
import { normalCdf } from '../stats/normalCdf.ts'
import { type GaugeDigits, unroundedDigits, unroundedShare } from './gaugeDigits.ts'
import type { HabitSeen } from './habit.ts'

/** Chance at which honest amounts may be taken for rounded ones, each gauge. */
export const roundingLevel = 0.001
/** Share of rounded readings from which it matters. */
const roundedThatMatters = 0.05
const enoughReadings = 50
/** Share of multiples among honest amounts, at least: for ones of 20 to 35 steps on average 0.21 to 0.22, and 0.11 to 0.12. */
export const leastUnrounded = { 5: 0.22, 10: 0.12 } as const
/** Half millimetres: finer steps are how gauges are made, coarser ones how they are read. */
const coarseStepMm = 0.5
const offThatMatters = 0.05
const z80 = 1.2815515655446004

/**
 * Shares of the amounts that are rounded to fives and to tens of steps, told apart by the last digits: who rounds to
 * fives writes as many fives as zeros, who rounds to tens only zeros.
 *
 *   share ending in 0 = (1 - fives - tens) · honest₀ + fives / 2 + tens
 *   share ending in 5 = (1 - fives - tens) · honest₅ + fives / 2
 *
 * @returns fives and tens; none where there are too few amounts
 */
export function roundingHabits(digits: GaugeDigits): HabitSeen[] {
  const n = digits.withDigits
  if (n < enoughReadings) return []
  const [honest0 = 0.1, , , , , honest5 = 0.1] = unroundedDigits(digits.meanWithDigits)
  const zeros = digits.lastDigit[0]! / n
  const fives = digits.lastDigit[5]! / n
  const gain = 1 / (1 - honest0 - honest5)
  const rounded = gain * (zeros + fives - honest0 - honest5)
  const toFives = 2 * (fives - (1 - rounded) * honest5)
  const toTens = rounded - toFives
  // Both are linear in the two shares, whose errors are multinomial.
  const slope = 2 * honest5 * gain
  const errorOf = (perZero: number, perFive: number): number => {
    const variance = perZero ** 2 * zeros + perFive ** 2 * fives - (perZero * zeros + perFive * fives) ** 2
    return Math.sqrt(variance / n + (0.5 / n) ** 2)
  }
  const toFivesSd = errorOf(slope, 2 + slope)
  const toTensSd = errorOf(gain - slope, gain - 2 - slope)
  const isBeyond = (found: number, among: number, share: number): boolean =>
    among > 0 && binomialAtLeast(found, among, share) <= roundingLevel
  const manyFives = isBeyond(
    digits.fives,
    digits.fromFive,
    Math.max(leastUnrounded[5], unroundedShare(5, digits.meanFromFive)),
  )
  const manyTens =
    isBeyond(digits.lastDigit[0]!, n, Math.max(leastUnrounded[10], honest0)) &&
    // More zeros than go with the fives.
    isBeyond(
      digits.lastDigit[0]!,
      digits.lastDigit[0]! + digits.lastDigit[5]!,
      Math.max(0.5, honest0 / (honest0 + honest5)),
    )
  return [rounding('fives', toFives, toFivesSd, manyFives, n), rounding('tens', toTens, toTensSd, manyTens, n)]
}

function rounding(kind: 'fives' | 'tens', value: number, sd: number, isBeyond: boolean, readings: number): HabitSeen {
  const within = (share: number): number => Math.max(0, Math.min(1, share))
  const sure = normalCdf((value - roundedThatMatters) / sd)
  return {
    kind,
    value: within(value),
    low: within(value - z80 * sd),
    high: within(value + z80 * sd),
    sure: isBeyond ? sure : Math.min(sure, 0.5),
    size: within(value),
    readings,
  }
}

/** A gauge read to steps coarser than those of the middle gauge: whole or half millimetres, say. */
export function coarseHabit(digits: GaugeDigits, usualStepMm: number): HabitSeen | null {
  if (digits.wet < enoughReadings) return null
  const isCoarse = digits.stepMm >= coarseStepMm && digits.stepMm > 1.9 * usualStepMm
  return {
    kind: 'coarse',
    value: digits.stepMm,
    low: digits.stepMm,
    high: digits.stepMm,
    // So many amounts do not fall on coarse steps by chance.
    sure: isCoarse ? 1 - 0.5 ** Math.min(30, digits.wet / 4) : 0,
    size: isCoarse ? 0.3 : 0,
    readings: digits.wet,
  }
}

/** Readings between the gauge's own steps, where the network's amounts can be written so finely. */
export function offStepsHabit(digits: GaugeDigits, usualShare: number): HabitSeen | null {
  if (digits.wet < enoughReadings) return null
  const share = (digits.offSteps + 0.5) / (digits.wet + 1)
  const sd = Math.sqrt((share * (1 - share)) / digits.wet)
  return {
    kind: 'off-steps',
    value: digits.offSteps / digits.wet,
    low: Math.max(0, share - z80 * sd),
    high: Math.min(1, share + z80 * sd),
    sure: normalCdf((share - usualShare - offThatMatters) / sd),
    size: Math.max(0, Math.min(1, share - usualShare)),
    readings: digits.wet,
  }
}
