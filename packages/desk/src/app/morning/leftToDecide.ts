/** What of a judged morning waits for a person, once the network's rule has decided what it may. */
import { decisionsInForce } from './decisionsInForce.ts'
import { docketTest } from './docketTest.ts'
import type { JudgedMorning } from './judgedMorning.ts'
import { ruleDecisions } from './ruleDecisions.ts'

/** @returns ids of the readings on the docket that nobody has decided about or asked about; as the review will have it */
export function leftToDecide({ morning, odds }: JudgedMorning): ReadonlySet<string> {
  const { network, letStandAt, decisions } = morning
  const added = ruleDecisions({ letStandAt, network, odds, decisions, newId: () => 'supposed', nowUtc: '' })
  const inForce = decisionsInForce([...decisions, ...added])
  const left = new Set<string>()
  const isForDocket = docketTest(morning)
  for (const [readingId, odd] of odds) {
    if (!inForce.has(readingId) && isForDocket(readingId, odd)) left.add(readingId)
  }
  return left
}
