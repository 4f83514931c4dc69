/**
 * The odds that the rule would have met on past mornings: the readings as they were reported, each day judged by nothing
 * later than itself, with what the network has learned by now. On threads of their own, a month at a time.
 */
import { isoFromEpochDay, type RuleMornings } from '@gaugewright/science'
import type { Ledger, NetworkSettings } from '../../ports/ledger.ts'
import type { LearnedModel } from '../model/learnedModel.ts'
import { acceptedRecord } from '../morning/acceptedRecord.ts'
import { morningTable } from '../morning/morningTable.ts'
import { isComparable } from '../morning/readingWindow.ts'
import { judgeStretches } from './judgeStretches.ts'
import type { OddsOfStretch, OddsStretch } from './oddsWork.ts'

export interface MorningsAsk {
  network: NetworkSettings
  learned: LearnedModel
  /** Epoch days, both included. */
  fromDay: number
  toDay: number
  signal?: AbortSignal
  onProgress?: (daysDone: number, dayCount: number) => void
}

export interface OddsOfMornings extends RuleMornings {
  cannotTell: number
}

const STRETCH_DAYS = 31
/** Days of context before a stretch. */
const BEFORE_DAYS = 12

/** @throws the signal's reason when stopped; what a thread failed with */
export async function oddsOfMornings(ledger: Ledger, ask: MorningsAsk): Promise<OddsOfMornings> {
  const { learned, fromDay, toDay } = ask
  const dayCount = toDay - fromDay + 1
  const starts = Array.from({ length: Math.ceil(dayCount / STRETCH_DAYS) }, (_, i) => fromDay + i * STRETCH_DAYS)
  const stretches = starts.map((start) => {
    const last = Math.min(toDay, start + STRETCH_DAYS - 1)
    return { dayCount: last - start + 1, make: () => stretchFrom(ledger, ask, start, last) }
  })
  const parts = await judgeStretches({ gauges: learned.gaugeSet, model: learned.model }, stretches, ask)
  return joined(parts, fromDay, dayCount)
}

async function stretchFrom(ledger: Ledger, ask: MorningsAsk, fromDay: number, toDay: number): Promise<OddsStretch> {
  const { network, learned } = ask
  const first = fromDay - BEFORE_DAYS
  const readings = await ledger.readings(network.id, isoFromEpochDay(first), isoFromEpochDay(toDay))
  const asReported = acceptedRecord(
    readings.filter((reading) => isComparable(network, reading)),
    [],
  )
  const { table } = morningTable(asReported, learned.indexOf, first, toDay - first + 1)
  return { table, fromDay, toDay }
}

function joined(parts: readonly OddsOfStretch[], fromDay: number, morningCount: number): OddsOfMornings {
  const count = parts.reduce((sum, part) => sum + part.day.length, 0)
  const all = { pStands: new Float64Array(count), morning: new Int32Array(count), morningCount, cannotTell: 0 }
  let at = 0
  for (const { day, pStands, cannotTell } of parts) {
    all.pStands.set(pStands, at)
    for (const one of day) all.morning[at++] = one - fromDay
    all.cannotTell += cannotTell
  }
  return all
}
