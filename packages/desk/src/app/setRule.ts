/**
 * Set the rule, or switch it off: a new setting beside the old ones, in force from now on. Decisions by persons stay as they
 * are; those by the rule are looked at again when their day is next reviewed. Setting an old one again undoes.
 */
import type { Rule, SetRuleAsk } from '@gaugewright/contract'
import { highestLetStandAt, lowestLetStandAt } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, refused } from './answer.ts'
import { readRule } from './readRule.ts'

export async function setRule(ports: Ports, ask: SetRuleAsk & { byPersonId?: string }): Promise<Answer<Rule>> {
  const before = await readRule(ports)
  if (!before.ok) return before
  const problem = problemWith(ask)
  if (problem !== null) return problem
  // The same again (a button pressed twice) adds nothing.
  if (ask.letStandAt === before.value.letStandAt) return before
  await ports.ledger.appendRuleSetting(before.value.network.id, {
    id: ports.newId(),
    letStandAt: ask.letStandAt,
    by: ask.by,
    ...(ask.byPersonId !== undefined && { byPersonId: ask.byPersonId }),
    why: ask.why.trim(),
    setAtUtc: ports.clock.nowUtc(),
  })
  return readRule(ports)
}

function problemWith({ letStandAt, why }: SetRuleAsk): ReturnType<typeof refused> | null {
  if (letStandAt !== null && !isThreshold(letStandAt)) {
    return refused(
      'RULE_THRESHOLD_OUTSIDE',
      `a threshold of ${letStandAt}`,
      `Give odds from ${lowestLetStandAt} to ${highestLetStandAt} with at most four decimals, or switch the rule off.`,
    )
  }
  if (why.trim() === '') {
    return refused('RULE_WHY_MISSING', 'a setting without a reason', 'Say in a few words why: it is kept beside it.')
  }
  return null
}

export function isThreshold(letStandAt: number): boolean {
  const isWithin = letStandAt >= lowestLetStandAt && letStandAt <= highestLetStandAt
  return isWithin && Math.abs(letStandAt * 10_000 - Math.round(letStandAt * 10_000)) < 1e-6
}
