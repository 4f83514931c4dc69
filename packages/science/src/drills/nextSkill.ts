/**
 * Which skill comes next in a sitting: more of what was missed. Each skill's chance of a right answer has a beta posterior
 * (one right and one wrong before anything is seen); one value is drawn from each, and the skill with the lowest is asked
 * (Thompson's rule, [Thompson1933]). In a whole sitting every skill comes at least once, and none twice in a row.
 */
import { type DrillSkill, drillSkills } from './drill.ts'

export interface DrillPast {
  skill: DrillSkill
  isRight: boolean
}

export const SITTING_LENGTH = 18

/** @param past  answers of this sitting, oldest first; @param before  answers of earlier sittings, which count half */
export function nextSkill(past: readonly DrillPast[], before: readonly DrillPast[], random: () => number): DrillSkill {
  const last = past.at(-1)?.skill
  const unseen = drillSkills.filter((skill) => past.every((one) => one.skill !== skill))
  const left = SITTING_LENGTH - past.length
  // What was just asked has been seen, so that something is always left.
  const open = (left <= unseen.length ? unseen : drillSkills).filter((skill) => skill !== last)
  let chosen = open[0]!
  let lowest = Number.POSITIVE_INFINITY
  for (const skill of open) {
    const count = (all: readonly DrillPast[], isRight: boolean) =>
      all.filter((one) => one.skill === skill && one.isRight === isRight).length
    const right = 1 + count(past, true) + Math.floor(count(before, true) / 2)
    const missed = 1 + count(past, false) + Math.floor(count(before, false) / 2)
    const drawn = betaDraw(right, missed, random)
    if (drawn < lowest) {
      lowest = drawn
      chosen = skill
    }
  }
  return chosen
}

/** For whole a and b: the a-th smallest of a + b - 1 even random numbers is Beta(a, b). */
function betaDraw(a: number, b: number, random: () => number): number {
  const count = Math.min(200, a + b - 1)
  const drawn = Float64Array.from({ length: count }, () => random()).sort()
  return drawn[Math.min(count - 1, a - 1)]!
}
