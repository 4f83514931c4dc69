/**
 * "Let stand when at least this sure": what the network's rule decides on a judged morning. Pure.
 * A rule's decision settles nothing for the kernels, so findings do not move by it and running it twice adds nothing.
 * The rule takes a decision of its own back where a later setting asks for more, or where later reports put the reading in
 * doubt. Where a person has ever decided, or took a rule's decision back, it keeps out for good.
 */
import { type Decision, ruleName } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import { ruleReason, takenBackReason } from '../wording/ruleReason.ts'
import { decisionsInForce } from './decisionsInForce.ts'

export interface RuleAsk {
  /** Of the setting in force; null leaves everything to a person. */
  letStandAt: number | null
  network: Pick<NetworkSettings, 'docketBelow' | 'language'>
  /** Of the day's readings, by reading id. */
  odds: ReadonlyMap<string, { standsOdds: number; canTell: boolean }>
  /** Every decision about the day's readings, oldest first, undone ones included. */
  decisions: readonly Decision[]
  newId: () => string
  nowUtc: string
}

/** @returns what is to be added, oldest first: decisions made, and rows that take the rule's own decisions back */
export function ruleDecisions(ask: RuleAsk): Decision[] {
  const { letStandAt, network, odds } = ask
  const byPerson = new Set<string>()
  for (const { by, readingId } of ask.decisions) if (by.kind === 'person') byPerson.add(readingId)
  const inForce = decisionsInForce(ask.decisions)
  const now = { by: { kind: 'rule' as const, rule: ruleName(letStandAt) }, decidedAtUtc: ask.nowUtc }
  const added: Decision[] = []
  for (const [readingId, { canTell, standsOdds }] of odds) {
    if (byPerson.has(readingId)) continue
    const before = inForce.get(readingId)
    const isSure = letStandAt !== null && canTell && standsOdds >= letStandAt
    if (before === undefined && isSure) {
      const reason = ruleReason(standsOdds, network.language)
      added.push({ ...now, id: ask.newId(), readingId, verdict: 'stands', amended: null, reason, undoes: null })
    }
    if (before === undefined || isSure) continue
    if (canTell && standsOdds >= keptDownTo(before, letStandAt, network.docketBelow)) continue
    const reason = takenBackReason(standsOdds, letStandAt, network.language)
    added.push({ ...before, ...now, id: ask.newId(), reason, undoes: before.id })
  }
  return added
}

/**
 * Odds down to which a rule's decision is kept. Under the setting that made it, it holds until the reading is in doubt:
 * odds move a little whenever the model learns, and a docket once cleared should not fill up again by that.
 */
function keptDownTo(before: Decision, letStandAt: number | null, docketBelow: number): number {
  if (letStandAt === null) return Number.POSITIVE_INFINITY
  const isSameRule = before.by.kind === 'rule' && before.by.rule === ruleName(letStandAt)
  return isSameRule ? Math.min(letStandAt, docketBelow) : letStandAt
}
