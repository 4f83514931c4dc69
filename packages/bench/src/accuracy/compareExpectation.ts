/** Our leave-one-out expectations beside kriging of roots on exactly the same gauge-days, and whether they are calibrated. */
import { seededRandom } from '@gaugewright/science'
import { daysOfHalf, type InjectedSet, stepMmOf } from '../data/loadInjected.ts'
import type { OurExpectations } from '../ours/expectByCommand.ts'
import { type ExpectationShape, expectationShape } from '../score/expectationShape.ts'
import { type ExpectationScores, scoreExpectations } from '../score/scoreExpectations.ts'

export interface OurExpectation {
  scores: ExpectationScores
  /** Kriging (the better variogram on the training half) on exactly the same gauge-days. */
  krigingCrpsMm: number
  ratio: number
  shape: ExpectationShape
}

/** Any seed: it only spreads readings within their rounding cells. */
const seed = 20_031

/** @param krigingCrpsMm  one per cell of the clean table; gauge-days that kriging cannot do are left out on both sides */
export function compareExpectation(
  set: InjectedSet,
  all: OurExpectations,
  krigingCrpsMm: Float64Array,
  half: 'first' | 'second' | 'all',
): OurExpectation {
  const { fromDay, toDay } = daysOfHalf(set.clean, half)
  const cellOf = (i: number): number => (all.day[i]! - set.clean.firstDay) * set.clean.gaugeCount + all.gauge[i]!
  const kept = Array.from(all.gauge.keys()).filter(
    (i) => all.day[i]! >= fromDay && all.day[i]! <= toDay && !Number.isNaN(krigingCrpsMm[cellOf(i)]!),
  )
  const quantilesMm = new Float32Array(kept.length * all.levelCount)
  kept.forEach((i, place) => {
    quantilesMm.set(all.quantilesMm.subarray(i * all.levelCount, (i + 1) * all.levelCount), place * all.levelCount)
  })
  const expectations = {
    gauge: Int32Array.from(kept, (i) => all.gauge[i]!),
    day: Int32Array.from(kept, (i) => all.day[i]!),
    levelCount: all.levelCount,
    quantilesMm,
    dryChance: Float64Array.from(kept, (i) => all.dryChance[i]!),
  }
  const scores = scoreExpectations(expectations, set.clean)
  let sum = 0
  let count = 0
  kept.forEach((i, place) => {
    if (Number.isNaN(scores.crpsEachMm[place]!)) return
    sum += krigingCrpsMm[cellOf(i)]!
    count++
  })
  return {
    scores,
    krigingCrpsMm: sum / count,
    ratio: scores.crpsMm / (sum / count),
    shape: expectationShape(expectations, set.clean, stepMmOf(set), seededRandom(seed)),
  }
}
