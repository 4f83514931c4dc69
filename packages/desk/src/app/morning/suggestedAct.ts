/**
 * What is offered first for a reading. A mistake is amended unasked only where it has a name and is likelier than not;
 * any other doubt is the observer's to clear. Every other act stays open to the coordinator.
 */
import type { SuggestedAct } from '@gaugewright/contract'
import type { Finding } from '@gaugewright/science'

const LIKELIER_THAN_NOT = 0.5

/** @param docketBelow  odds of standing below which a reading is in doubt */
export function suggestedAct(
  finding: Pick<Finding, 'canTell' | 'standsOdds' | 'likeliestMistake' | 'likeliestMistakeOdds' | 'proposedMm'>,
  docketBelow: number,
): SuggestedAct {
  if (!finding.canTell || finding.standsOdds >= docketBelow) return 'stands'
  const isNamed = finding.likeliestMistake !== 'other'
  const isLikely = finding.likeliestMistakeOdds >= LIKELIER_THAN_NOT
  return isNamed && isLikely && Number.isFinite(finding.proposedMm) ? 'amend' : 'ask'
}
