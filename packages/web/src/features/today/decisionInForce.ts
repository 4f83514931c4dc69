import type { WireDecision } from '@gaugewright/contract'

/** The latest decision that was not taken back. @param decisions  about one reading, oldest first */
export function decisionInForce(decisions: readonly WireDecision[]): WireDecision | null {
  const undone = new Set(decisions.map((decision) => decision.undoes))
  return decisions.findLast((decision) => decision.undoes === null && !undone.has(decision.id)) ?? null
}
