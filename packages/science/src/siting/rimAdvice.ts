/**
 * How high the rim should stand: about 2 ft in the open, where wind carries drops over a high rim; about 5 ft in a built-up
 * yard, where a low one stands in the lee of fences and walls (common practice). Open is a yard where, from a low rim,
 * nothing stands steeper than 26.6° (twice the height).
 */
import { type ExposureClass, exposureClass } from './exposureClass.ts'
import { skylineAt } from './skyline.ts'
import type { YardPlan, YardPoint } from './yard.ts'

export const OPEN_RIM_M = 0.6
export const BUILT_UP_RIM_M = 1.5

export interface RimAdvice {
  surroundings: 'open' | 'built-up'
  advisedRimM: number
  /** Classes at either height, at this place. */
  classLow: ExposureClass
  classHigh: ExposureClass
  /** Whether the rim as planned lies within a hand's breadth (0.15 m) of what is advised. */
  isMet: boolean
}

export function rimAdvice(plan: YardPlan, at: YardPoint, rimM: number): RimAdvice {
  const ground = { slopeDeg: plan.slopeDeg, hasWindShield: plan.gauge?.hasWindShield ?? false }
  const low = skylineAt(plan, at, OPEN_RIM_M)
  const high = skylineAt(plan, at, BUILT_UP_RIM_M)
  const isOpen = low.obstacles.every(({ ratio }) => ratio >= 2)
  const advisedRimM = isOpen ? OPEN_RIM_M : BUILT_UP_RIM_M
  return {
    surroundings: isOpen ? 'open' : 'built-up',
    advisedRimM,
    classLow: exposureClass(low, ground).class,
    classHigh: exposureClass(high, ground).class,
    isMet: Math.abs(rimM - advisedRimM) <= 0.15,
  }
}
