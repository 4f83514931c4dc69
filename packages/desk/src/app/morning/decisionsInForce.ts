/** The decision in force for each reading: the latest that was not taken back. Undoing is itself a row, never a deletion. */
import type { Decision } from '@gaugewright/science'

/**
 * @param decisions  oldest first; rows with `undoes` only take an earlier one back
 * @returns by reading id; a reading whose every decision was undone is absent
 */
export function decisionsInForce(decisions: readonly Decision[]): Map<string, Decision> {
  const undone = new Set<string>()
  for (const decision of decisions) if (decision.undoes !== null) undone.add(decision.undoes)
  const inForce = new Map<string, Decision>()
  for (const decision of decisions) {
    if (decision.undoes === null && !undone.has(decision.id)) inForce.set(decision.readingId, decision)
  }
  return inForce
}
