/**
 * "Let stand when at least this sure": the decisions that the network's rule makes on a judged morning. Pure.
 * A rule's decision settles nothing for the kernels, so findings do not move by it and running it twice adds nothing.
 * Where a person has ever decided, or took a rule's decision back, the rule keeps out.
 */
import type { Decision } from '@gaugewright/science'

export interface RuleAsk {
  letStandAt: number
  /** Of the day's readings, by reading id. */
  odds: ReadonlyMap<string, { standsOdds: number; canTell: boolean }>
  /** Every decision about the day's readings, undone ones included. */
  decisions: readonly Decision[]
  newId: () => string
  nowUtc: string
}

export function ruleDecisions(ask: RuleAsk): Decision[] {
  const decidedBefore = new Set(ask.decisions.map((decision) => decision.readingId))
  const made: Decision[] = []
  for (const [readingId, { canTell, standsOdds }] of ask.odds) {
    if (!canTell || standsOdds < ask.letStandAt || decidedBefore.has(readingId)) continue
    made.push({
      id: ask.newId(),
      readingId,
      verdict: 'stands',
      amended: null,
      by: { kind: 'rule', rule: `let stand at ${ask.letStandAt}` },
      reason: `${(standsOdds * 100).toFixed(1)} % sure`,
      decidedAtUtc: ask.nowUtc,
      undoes: null,
    })
  }
  return made
}
