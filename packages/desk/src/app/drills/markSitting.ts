/** A sitting done again at the desk: the same drills from the same seed, each answer marked anew. */
import type { JournalBody, SittingAsk } from '@gaugewright/contract'
import { type DrillPast, makeDrill, markDrill, nextSkill, seededRandom } from '@gaugewright/science'

export function markSitting(ask: SittingAsk, passMark: number): JournalBody<'sitting'> {
  const random = seededRandom(ask.seed)
  const past: DrillPast[] = []
  const answers = ask.answers.map((text) => {
    const skill = nextSkill(past, [], random)
    const mark = markDrill(makeDrill(skill, ask.unit, random), text)
    past.push({ skill, isRight: mark.isRight })
    return { skill, text, isRight: mark.isRight, reason: mark.isRight ? null : mark.reason }
  })
  return { seed: ask.seed, unit: ask.unit, passMark, answers }
}
