/**
 * What a rule would do at each of several thresholds, on the same mornings: how much it lets stand, what it leaves to a
 * person, and how many wrong readings it is expected to let through. One pass over the readings, surest first.
 */
import { ScienceError } from '../error.ts'
import { quantile } from '../stats/quantile.ts'
import { forecastWrong, type WrongForecast } from './forecastWrong.ts'

/** Readings of some mornings in a row, only those about which something can be told. */
export interface RuleMornings {
  /** Odds of standing of each reading, 0 to 1; no NaN. */
  pStands: Float64Array
  /** Place of its morning, 0 to morningCount - 1. */
  morning: Int32Array
  /** All mornings looked at, those without any reading included. */
  morningCount: number
}

export interface RulePoint {
  letStandAt: number
  /** Readings of all mornings together. */
  letStand: number
  leftToPerson: number
  expectedWrong: number
  /** Mean over the mornings, and what one morning in ten exceeds (P90). */
  leftAMorning: number
  busyMorningLeft: number
  /** Wrong readings let through in 30 and in 365 mornings to come. */
  month: WrongForecast
  year: WrongForecast
}

export const monthMornings = 30
export const yearMornings = 365

/**
 * @param thresholds  any order; the points come back rising
 * @throws {ScienceError} SHAPES_DIFFER; TOO_FEW_POINTS without a morning; OUT_OF_DOMAIN where odds are none
 * @remarks Time O(n log n + thresholds · mornings log mornings).
 */
export function ruleCurve(of: RuleMornings, thresholds: readonly number[]): RulePoint[] {
  const { pStands, morning, morningCount } = of
  if (pStands.length !== morning.length) {
    throw new ScienceError('SHAPES_DIFFER', `${pStands.length} odds of ${morning.length} readings`)
  }
  const left = new Float64Array(morningCount)
  const expected = new Float64Array(morningCount)
  const variance = new Float64Array(morningCount)
  pStands.forEach((stands, i) => {
    if (!(stands >= 0 && stands <= 1))
      throw new ScienceError('OUT_OF_DOMAIN', `reading ${i} stands with odds ${stands}`)
    left[morning[i]!]!++
  })
  const surestFirst = Uint32Array.from(pStands.keys()).sort((a, b) => pStands[b]! - pStands[a]!)
  const points: RulePoint[] = []
  let letStand = 0
  let expectedWrong = 0
  for (const letStandAt of [...new Set(thresholds)].sort((a, b) => b - a)) {
    for (; letStand < surestFirst.length; letStand++) {
      const reading = surestFirst[letStand]!
      const stands = pStands[reading]!
      if (stands < letStandAt) break
      const day = morning[reading]!
      left[day]!--
      expected[day]! += 1 - stands
      variance[day]! += stands * (1 - stands)
      expectedWrong += 1 - stands
    }
    const leftToPerson = pStands.length - letStand
    points.push({
      letStandAt,
      letStand,
      leftToPerson,
      expectedWrong,
      leftAMorning: leftToPerson / morningCount,
      busyMorningLeft: quantile(left, 0.9),
      month: forecastWrong(expected, variance, monthMornings),
      year: forecastWrong(expected, variance, yearMornings),
    })
  }
  return points.reverse()
}
