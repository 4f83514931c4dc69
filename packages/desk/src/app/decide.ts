/** Decide about one reading. The decision stands beside the reading; the day comes back, reviewed anew. */
import type { DayReview, DecideAsk } from '@gaugewright/contract'
import type { Decision, Mistake, Reading } from '@gaugewright/science'
import type { Ledger } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'
import { personFrom } from './access/doer.ts'
import { amendedProblem } from './amendedProblem.ts'
import { type Answer, refused } from './answer.ts'
import { currentReading } from './currentReading.ts'
import { decisionsInForce } from './morning/decisionsInForce.ts'
import { findingOf, judgedMorning, judgedWithout } from './morning/judgedMorning.ts'
import { loadMorning } from './morning/loadMorning.ts'
import { reviewDay } from './reviewDay.ts'

export async function decide(ports: Ports, ask: DecideAsk & { byPersonId?: string }): Promise<Answer<DayReview>> {
  const found = await currentReading(ports.ledger, ask.readingId)
  if (!found.ok) return found
  const { reading, network } = found.value
  const problem = problemWith(ask, reading)
  if (problem !== null) return problem
  const { lastDay } = reading
  const inForce = decisionsInForce(await ports.ledger.decisions(network.id, lastDay, lastDay)).get(reading.id)
  if (inForce === undefined || !isSame(inForce, ask)) {
    const mistake = await mistakeNamed(ports.ledger, reading)
    await ports.ledger.appendDecision(network.id, {
      id: ports.newId(),
      readingId: reading.id,
      verdict: ask.verdict,
      amended: ask.amended,
      by: personFrom(ask),
      reason: ask.reason,
      ...(mistake !== null && { mistake }),
      decidedAtUtc: ports.clock.nowUtc(),
      undoes: null,
    })
  }
  return reviewDay(ports, { day: lastDay })
}

/** What the finding that the person sees takes for the likeliest mistake; null where the reading is not judged. */
async function mistakeNamed(ledger: Ledger, reading: Reading): Promise<Mistake | null> {
  const loaded = await loadMorning(ledger, reading.lastDay)
  if (!loaded.ok) return null
  const judged = await judgedMorning(ledger, loaded.value)
  const finding = findingOf(judgedWithout(ledger, judged, reading.id), reading.id)
  return finding?.canTell === true ? finding.likeliestMistake : null
}

/** Deciding the same again (a key pressed twice) adds nothing. */
function isSame(before: Decision, ask: DecideAsk & { byPersonId?: string }): boolean {
  return (
    before.by.kind === 'person' &&
    before.by.name === ask.by &&
    before.by.personId === ask.byPersonId &&
    before.verdict === ask.verdict &&
    before.reason === ask.reason &&
    JSON.stringify(before.amended) === JSON.stringify(ask.amended)
  )
}

function problemWith(ask: DecideAsk, reading: Reading): ReturnType<typeof refused> | null {
  const { amended, verdict } = ask
  if ((verdict === 'amended') !== (amended !== null)) {
    return refused(
      'AMENDED_AMOUNT_MISPLACED',
      amended === null ? 'the verdict "amended" without an amount' : `the verdict "${verdict}" with an amended amount`,
      'Give an amount and its days with "amended", and with no other verdict.',
    )
  }
  return amended === null ? null : amendedProblem(amended, reading)
}
