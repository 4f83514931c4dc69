/** The first fault of a plan in one line, as a problem: for doors that know no drawing. Screens word all of them. */
import type { YardFault, YardPlan } from '@gaugewright/science'
import { refused } from '../answer.ts'

export function yardProblem(plan: YardPlan, faults: readonly YardFault[]): ReturnType<typeof refused> | null {
  const fault = faults.find(({ weight }) => weight === 'fault')
  if (fault === undefined) return null
  const obstacle = plan.obstacles.findIndex(({ id }) => id === fault.itemId)
  const hazard = plan.hazards.findIndex(({ id }) => id === fault.itemId)
  const named =
    obstacle >= 0
      ? `obstacle ${obstacle + 1} (${plan.obstacles[obstacle]!.name || plan.obstacles[obstacle]!.kind})`
      : hazard >= 0
        ? `hazard ${hazard + 1} (${plan.hazards[hazard]!.name || plan.hazards[hazard]!.kind})`
        : fault.code.startsWith('RIM') || fault.code.startsWith('GAUGE')
          ? 'the gauge'
          : 'the yard'
  const seen = Number.isFinite(fault.seen) ? `${named}: ${Math.round(fault.seen * 100) / 100}` : `${named}: no number`
  return refused(fault.code, seen, advice[fault.code])
}

const advice: Record<YardFault['code'], string> = {
  YARD_NUMBER_UNREADABLE: 'Give positions and heights as numbers.',
  YARD_TOO_FEW_CORNERS: 'Draw at least three corners around the yard.',
  YARD_NO_AREA: 'Draw an outline of at least a square metre.',
  YARD_CROSSES_ITSELF: 'Move a corner so that no two sides cross.',
  YARD_TOO_LARGE: 'Draw at most a kilometre; look at the unit.',
  YARD_SLOPE_IMPOSSIBLE: 'Give a slope from 0 to below 90 degrees.',
  OBSTACLE_TOO_FEW_CORNERS: 'A ring needs three corners, a line two.',
  OBSTACLE_NO_AREA: 'Draw its ground plan, or a line.',
  OBSTACLE_CROSSES_ITSELF: 'Move a corner so that no two sides cross.',
  OBSTACLE_NO_WIDTH: 'Give how wide it is, above 0.',
  OBSTACLE_NO_HEIGHT: 'Give its height above the ground, above 0.',
  OBSTACLE_TOO_TALL: 'Nothing of that kind is so tall: look at the decimal point and the unit.',
  OBSTACLE_VERY_TALL: 'Measure it again if you can.',
  OBSTACLE_TOO_NEAR: 'Measure from the gauge to its nearest part, at least 0.2 m.',
  OBSTACLE_AROUND_GAUGE: 'The gauge stands within it: move one of the two.',
  RIDGE_BELOW_EAVES: 'The ridge must not be lower than the eaves.',
  HAZARD_REACH_IMPOSSIBLE: 'Give how far it reaches, 0 to 100 m.',
  GAUGE_OUTSIDE_YARD: 'Move the gauge into the outline, or widen it.',
  RIM_TOO_LOW: 'Give the height of the rim, at least 0.1 m.',
  RIM_TOO_HIGH: 'Give a rim of at most 3 m: a gauge is read from the ground.',
}
