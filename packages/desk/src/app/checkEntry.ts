/**
 * The check at entry: is what was typed so improbable that the observer should look again? Judged as the desk would judge
 * it, beside the morning's neighbours where there are any, else by the gauge's own climate. The answer tells neither odds
 * nor what was expected, and only a few amounts a day are held against the neighbours (my/entryLimits.ts).
 */
import type { Actor, CheckEntryAsk, CheckedEntry, WireEntryQuestion } from '@gaugewright/contract'
import {
  type Amount,
  checkAlone,
  type EntryQuestion,
  epochDayFromIso,
  isoFromEpochDay,
  judgeEntry,
  pocketClimate,
} from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import type { JudgedMorning } from './morning/judgedMorning.ts'
import { entryLimit } from './my/entryLimits.ts'
import { entryMorning } from './my/entryMorning.ts'
import { type OwnGauge, ownGauge } from './my/ownGauge.ts'
import { pocketOf } from './my/pocketOf.ts'
import { typedAmount } from './my/typedAmount.ts'

/** Older days are not held against the neighbours: nobody types them in passing. */
const NEIGHBOURS_FOR_DAYS = 10

type CheckPorts = Pick<Ports, 'ledger' | 'clock'>
type Span = Pick<CheckEntryAsk, 'firstDay' | 'lastDay'>

export async function checkEntry(
  ports: CheckPorts,
  ask: CheckEntryAsk & { actor: Actor },
): Promise<Answer<CheckedEntry>> {
  const found = await ownGauge(ports, ask.actor, ask.gauge)
  if (!found.ok) return found
  const { gauge } = found.value
  const span = epochDayFromIso(ask.lastDay) - epochDayFromIso(ask.firstDay) + 1
  if (span < 1 || span > 62) {
    return refused('SPAN_NOT_VALID', `${ask.firstDay} to ${ask.lastDay}`, 'Give days in order, at most 62 of them.')
  }
  const amount = typedAmount({ text: ask.text, unit: ask.unit, dayCount: span }, gauge.resolutionUm)
  if (!amount.ok) return amount
  const judged = await morningBeside(ports, found.value, ask)
  const beside = besideNeighbours(ports, judged, found.value, ask, amount.value)
  const question = beside === 'cannot tell' ? await alone(ports, judged, found.value, ask, amount.value) : beside
  return answered({ question: wire(question) })
}

/** Kept from check to check; null where the day is too old or has no reading yet. */
async function morningBeside(
  { ledger }: CheckPorts,
  { days, nowUtc }: OwnGauge,
  { lastDay }: Span,
): Promise<JudgedMorning | null> {
  const nowMs = Date.parse(nowUtc)
  if (epochDayFromIso(lastDay) < days.dayOf(nowMs) - NEIGHBOURS_FOR_DAYS) return null
  return await entryMorning(ledger, lastDay, nowMs)
}

function besideNeighbours(
  { ledger }: CheckPorts,
  judged: JudgedMorning | null,
  { gauge }: OwnGauge,
  { firstDay, lastDay }: Span,
  amount: Amount,
): EntryQuestion | null | 'cannot tell' {
  const limit = entryLimit(ledger, gauge.id, lastDay)
  const amountKey = `${firstDay} ${amount.amountUm} ${amount.isTrace}`
  const before = limit.answerBefore(amountKey)
  if (before !== undefined) return before
  const index = judged?.learned.indexOf.get(gauge.id)
  if (judged === null || index === undefined || !limit.mayAsk()) return 'cannot tell'
  const dayRange = { firstDay: epochDayFromIso(firstDay), lastDay: epochDayFromIso(lastDay) }
  const question = judgeEntry(judged.judgement, { gauge: index, ...amount, ...dayRange })
  if (question !== 'cannot tell') limit.keep(amountKey, wire(question))
  return question
}

async function alone(
  { ledger }: CheckPorts,
  judged: JudgedMorning | null,
  { network, gauge }: OwnGauge,
  { firstDay, lastDay }: Span,
  amount: Amount,
): Promise<EntryQuestion | null> {
  const index = judged?.learned.indexOf.get(gauge.id)
  const pocket =
    judged === null || index === undefined
      ? await pocketOf(ledger, network.id, gauge.id)
      : pocketClimate(judged.learned.model, index)
  if (pocket === null) return null
  const first = epochDayFromIso(firstDay)
  const dayBefore = isoFromEpochDay(first - 1)
  const [previous] = await ledger.readingsOfGauge(network.id, gauge.id, dayBefore, dayBefore)
  const previousUm = previous?.kind === 'daily' ? previous.amountUm : null
  return checkAlone(pocket, { ...amount, firstDay: first, lastDay: epochDayFromIso(lastDay), previousUm })
}

function wire(question: EntryQuestion | null): WireEntryQuestion | null {
  return question === null ? null : { alternatives: [...question.alternatives] }
}
