/** What a sitting shows: passed or not, each skill, what to repeat. */
import type { DrillSkill } from './drill.ts'
import { drillSkills } from './drill.ts'
import type { DrillPast } from './nextSkill.ts'

export interface SkillShown {
  skill: DrillSkill
  right: number
  asked: number
}

export interface SittingResult {
  rightShare: number
  isPassed: boolean
  skills: SkillShown[]
  /** Missed at the last time that they were asked. */
  repeat: DrillSkill[]
}

/**
 * @param passMark  share of right answers that is wanted, 0 to 1. Safety must be right at its last time, whatever the share.
 */
export function sittingResult(answers: readonly DrillPast[], passMark: number): SittingResult {
  const right = answers.filter(({ isRight }) => isRight).length
  const rightShare = answers.length === 0 ? 0 : right / answers.length
  const lastOf = (skill: DrillSkill) => answers.filter((one) => one.skill === skill).at(-1)
  const repeat = drillSkills.filter((skill) => lastOf(skill)?.isRight === false)
  return {
    rightShare,
    isPassed: rightShare >= passMark && !repeat.includes('safety') && lastOf('safety') !== undefined,
    repeat,
    skills: drillSkills
      .map((skill) => {
        const own = answers.filter((one) => one.skill === skill)
        return { skill, right: own.filter(({ isRight }) => isRight).length, asked: own.length }
      })
      .filter(({ asked }) => asked > 0),
  }
}
