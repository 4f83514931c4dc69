import type { DayReview, DecideAsk, UndoAsk } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { askDesk } from './askDesk.ts'

/** Decide one reading; answers with its day, reviewed anew. @throws {ProblemError} */
export function postDecision(ask: DecideAsk): Promise<DayReview> {
  return askDesk<DayReview>(routes.decide.path, ask)
}

/** Undo a decision; answers with its day, reviewed anew. @throws {ProblemError} */
export function postUndo(ask: UndoAsk): Promise<DayReview> {
  return askDesk<DayReview>(routes.undo.path, ask)
}
