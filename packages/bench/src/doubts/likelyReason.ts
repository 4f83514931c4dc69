/**
 * What the days around and the nearest gauges suggest about a doubted reading: plain rules for sorting a list that a
 * person reads, with no part in judging. Factors are round and of our own choosing.
 */
import type { Surroundings } from './surroundings.ts'

export const likelyReasons = [
  'long-zeros',
  'zero-in-rain',
  'after-silence',
  'misdated',
  'total',
  'repeated',
  'slipped-point',
  'dry-around',
  'above-all',
  'below-all',
  'within',
] as const

export type LikelyReason = (typeof likelyReasons)[number]

/** Whether a reading that looks so is likely wrong, may be either, or likely right. */
export const verdictOf: Readonly<Record<LikelyReason, 'wrong' | 'open' | 'right'>> = {
  'long-zeros': 'wrong',
  'zero-in-rain': 'wrong',
  'after-silence': 'wrong',
  misdated: 'wrong',
  total: 'wrong',
  repeated: 'wrong',
  'slipped-point': 'wrong',
  'dry-around': 'open',
  'above-all': 'open',
  'below-all': 'open',
  within: 'right',
}

/** Zeros of a week in which so much fell around, on so many days, are not weather and not one day missed. */
const longRunDays = 7
const longRunMm = 30
const longRunWetDays = 3

/** @param stepMm  step in which the network writes amounts: a point slipped to the right leaves no digit in it */
export function likelyReason(at: Surroundings, stepMm: number): LikelyReason {
  return at.reportedMm === 0 ? reasonOfZero(at) : reasonOfAmount(at, stepMm)
}

function reasonOfZero(at: Surroundings): LikelyReason {
  const isLong = at.zerosInARow >= longRunDays && at.wetDaysOverRun >= longRunWetDays
  if (isLong && at.aroundOverRunMm >= longRunMm) return 'long-zeros'
  // The day's rain stands on the day beside it, where the others had little.
  const standsOn = (ownMm: number, aroundMm: number): boolean =>
    isLike(ownMm, at.around.medianMm) && aroundMm <= 0.3 * ownMm
  if (standsOn(at.beforeMm, at.aroundBefore.medianMm) || standsOn(at.afterMm, at.aroundAfter.medianMm))
    return 'misdated'
  return at.around.dryCount <= 1 && at.around.medianMm >= 1 ? 'zero-in-rain' : 'within'
}

function reasonOfAmount(at: Surroundings, stepMm: number): LikelyReason {
  const { reportedMm, around, aroundBefore, aroundAfter } = at
  if (reportedMm >= 1 && at.beforeMm === reportedMm) return 'repeated'
  // More than fell on the day, and no more than could have gathered since the last reading.
  const isGathered = reportedMm > 2 * around.medianMm && reportedMm <= 3 * at.aroundOverRunMm
  if (Number.isNaN(at.beforeMm) && isGathered) return 'after-silence'
  const fitsBeside = isLike(reportedMm, aroundBefore.medianMm) || isLike(reportedMm, aroundAfter.medianMm)
  if (fitsBeside && around.medianMm <= 0.3 * reportedMm) return 'misdated'
  const isSumBetter = isLike(reportedMm, at.aroundOverRunMm) && !isLike(reportedMm, around.medianMm)
  if (at.emptyDaysBefore > 0 && isSumBetter) return 'total'
  const mostMm = Math.max(around.mostMm, aroundBefore.mostMm || 0, aroundAfter.mostMm || 0)
  const isRound = Math.abs(reportedMm / (10 * stepMm) - Math.round(reportedMm / (10 * stepMm))) < 0.02
  const isTenfold = isRound && reportedMm > 1.5 * mostMm && isLike(reportedMm / 10, around.medianMm)
  const isTenth = reportedMm < around.leastMm / 2 && isLike(reportedMm * 10, around.medianMm)
  if (isTenfold || isTenth) return 'slipped-point'
  if (around.mostMm === 0) return 'dry-around'
  if (reportedMm > around.mostMm) return 'above-all'
  return reportedMm < around.leastMm ? 'below-all' : 'within'
}

/** Within a factor of two, and neither of them next to nothing. */
function isLike(oneMm: number, otherMm: number): boolean {
  return Math.min(oneMm, otherMm) >= 0.5 && oneMm <= 2 * otherMm && otherMm <= 2 * oneMm
}
