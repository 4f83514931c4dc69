/** A sitting as it goes: which drill comes, how it was marked. The same seed and answers give the same sitting. Pure. */
import {
  type Drill,
  type DrillMark,
  type DrillPast,
  makeDrill,
  markDrill,
  nextSkill,
  SITTING_LENGTH,
  seededRandom,
  type Unit,
} from '@gaugewright/science'

export interface SittingSoFar {
  past: (DrillPast & { drill: Drill; answer: string; mark: DrillMark })[]
  /** Null when all is answered. */
  drill: Drill | null
}

export function sittingSoFar(seed: number, unit: Unit, answers: readonly string[]): SittingSoFar {
  const random = seededRandom(seed)
  const past: SittingSoFar['past'] = []
  for (const answer of answers) {
    const skill = nextSkill(past, [], random)
    const drill = makeDrill(skill, unit, random)
    const mark = markDrill(drill, answer)
    past.push({ skill, isRight: mark.isRight, drill, answer, mark })
  }
  if (past.length >= SITTING_LENGTH) return { past, drill: null }
  return { past, drill: makeDrill(nextSkill(past, [], random), unit, random) }
}
