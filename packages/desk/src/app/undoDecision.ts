/** Take a decision back. Nothing is deleted: a row is added that names the decision it undoes. */
import type { DayReview, UndoAsk } from '@gaugewright/contract'
import { type Decision, epochDayFromIso, type IsoDay, isoFromEpochDay } from '@gaugewright/science'
import type { Ledger } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'
import { personFrom } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { reviewDay } from './reviewDay.ts'

export async function undoDecision(ports: Ports, ask: UndoAsk & { byPersonId?: string }): Promise<Answer<DayReview>> {
  for (const network of await ports.ledger.networks()) {
    const found = await findDecision(ports.ledger, network.id, ask.decisionId)
    if (found === null) continue
    const { decision, undone } = found
    if (undone || decision.undoes !== null) {
      return refused(
        'DECISION_ALREADY_UNDONE',
        undone ? `decision ${decision.id}, taken back before` : `${decision.id}, which itself takes a decision back`,
        'Open the day again to see what holds now.',
      )
    }
    await ports.ledger.appendDecision(network.id, {
      ...decision,
      id: ports.newId(),
      by: personFrom(ask),
      reason: '',
      decidedAtUtc: ports.clock.nowUtc(),
      undoes: decision.id,
    })
    const at = await ports.ledger.reading(network.id, decision.readingId)
    return reviewDay(ports, { day: at?.reading.lastDay ?? 'latest' })
  }
  return refused('DECISION_UNKNOWN', `no decision ${ask.decisionId}`, 'Open the day again to see the decisions made.')
}

/** Newest days first, since what is undone was mostly decided a moment ago. */
async function findDecision(
  ledger: Ledger,
  networkId: string,
  decisionId: string,
): Promise<{ decision: Decision; undone: boolean } | null> {
  const range = await ledger.dayRange(networkId)
  if (range === null) return null
  const last = epochDayFromIso(range.lastDay)
  let toDay: IsoDay = range.lastDay
  for (const back of [40, 400, Number.POSITIVE_INFINITY]) {
    const from = Math.max(epochDayFromIso(range.firstDay), last - back)
    const decisions = await ledger.decisions(networkId, isoFromEpochDay(from), toDay)
    const decision = decisions.find((row) => row.id === decisionId)
    if (decision !== undefined) return { decision, undone: decisions.some((row) => row.undoes === decisionId) }
    if (isoFromEpochDay(from) === range.firstDay) return null
    toDay = isoFromEpochDay(from - 1)
  }
  return null
}
