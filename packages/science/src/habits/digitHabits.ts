/**
 * Rounding, coarse steps and readings between the steps. Round figures are told only beyond the binomial limits of
 * unrounded amounts; the published constants of such tests are not known to us, the limits are worked out [Daly2007].
 */
import { binomialAtLeast } from '../stats/binomial.ts'
import { normalCdf } from '../stats/normalCdf.ts'
import { type GaugeDigits, unroundedShare } from './gaugeDigits.ts'
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

export function roundingHabit(kind: 'fives' | 'tens', digits: GaugeDigits): HabitSeen | null {
  const every = kind === 'fives' ? 5 : 10
  const readings = kind === 'fives' ? digits.fromFive : digits.fromTen
  const found = kind === 'fives' ? digits.fives : digits.tens
  const meanSteps = kind === 'fives' ? digits.meanFromFive : digits.meanFromTen
  if (readings < enoughReadings) return null
  const honest = Math.max(leastUnrounded[every], unroundedShare(every, meanSteps))
  const roundedFrom = (share: number): number => (share - honest) / (1 - honest)
  const share = (found + 0.5) / (readings + 1)
  const sd = Math.sqrt((share * (1 - share)) / readings) / (1 - honest)
  const value = roundedFrom(share)
  const isBeyond = binomialAtLeast(found, readings, honest) <= roundingLevel
  const sure = normalCdf((value - roundedThatMatters) / sd)
  return {
    kind,
    value: Math.max(0, value),
    low: Math.max(0, value - z80 * sd),
    high: Math.max(0, Math.min(1, value + z80 * sd)),
    sure: isBeyond ? sure : Math.min(sure, 0.5),
    size: Math.max(0, Math.min(1, value)),
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
