/** Decide about one reading. The decision stands beside the reading; the day comes back, reviewed anew. */
import type { DayReview, DecideAsk } from '@gaugewright/contract'
import { type Decision, epochDayFromIso, type Mistake, type Reading } from '@gaugewright/science'
import type { Ledger } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, refused } from './answer.ts'
import { currentReading } from './currentReading.ts'
import { decisionsInForce } from './morning/decisionsInForce.ts'
import { findingOf, judgedMorning, judgedWithout } from './morning/judgedMorning.ts'
import { loadMorning } from './morning/loadMorning.ts'
import { reviewDay } from './reviewDay.ts'

/** No rain gauge has ever caught this much in a few days: 10 m. */
const IMPOSSIBLE_UM = 10_000_000
/** An amended interval ends within this many days of the reading, and covers no more than a month. */
const NEAR_DAYS = 8
const LONGEST_DAYS = 31

export async function decide(ports: Ports, ask: DecideAsk): Promise<Answer<DayReview>> {
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
      by: { kind: 'person', name: ask.by },
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
function isSame(before: Decision, ask: DecideAsk): boolean {
  return (
    before.by.kind === 'person' &&
    before.by.name === ask.by &&
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
  if (amended === null) return null
  const first = epochDayFromIso(amended.firstDay)
  const last = epochDayFromIso(amended.lastDay)
  const away = Math.abs(last - epochDayFromIso(reading.lastDay))
  if (last < first || last - first >= LONGEST_DAYS || away > NEAR_DAYS) {
    return refused(
      'AMENDED_DAYS_IMPOSSIBLE',
      `${amended.firstDay} to ${amended.lastDay}, for a reading of ${reading.lastDay}`,
      `Give days in order, at most ${LONGEST_DAYS} of them, ending within ${NEAR_DAYS} days of the reading.`,
    )
  }
  if (amended.amountUm >= IMPOSSIBLE_UM || (amended.isTrace && amended.amountUm !== 0)) {
    return refused(
      'AMENDED_AMOUNT_IMPOSSIBLE',
      amended.isTrace ? `a trace of ${amended.amountUm} µm` : `${amended.amountUm / 1000} mm`,
      'Give the amount in micrometres, below ten metres; a trace has the amount 0.',
    )
  }
  return null
}
