/** A morning with its findings, kept by the state of the ledger so that asking twice costs nothing. */
import {
  type DailyTable,
  type Decision,
  type Evidence,
  epochDayFromIso,
  evidenceAt,
  type Finding,
  findingAt,
  type Judgement,
  judge,
  rejudge,
} from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import { type LearnedModel, learnedModel } from '../model/learnedModel.ts'
import { type AcceptedReading, acceptedRecord } from './acceptedRecord.ts'
import { type Morning, windowDays, withDecisions } from './loadMorning.ts'
import { morningTable } from './morningTable.ts'
import { isComparable } from './readingWindow.ts'
import { RecentlyUsed } from './recentlyUsed.ts'

export interface JudgedMorning {
  morning: Morning
  learned: LearnedModel
  accepted: AcceptedReading[]
  table: DailyTable
  /** Cell by cell, the id of the reading in it. */
  readingIds: readonly (string | undefined)[]
  judgement: Judgement
  /** Odds of the day's readings, by reading id. */
  odds: ReadonlyMap<string, ReadingOdds>
  /** Names everything the findings depend on. */
  stateKey: string
}

export interface ReadingOdds {
  standsOdds: number
  /** False where no neighbour took part: then the odds are only the usual ones. */
  canTell: boolean
  /** Place in the judgement. */
  index: number
}

const KEPT = 12
const kept = new WeakMap<Ledger, RecentlyUsed<JudgedMorning>>()

export async function judgedMorning(ledger: Ledger, morning: Morning, signal?: AbortSignal): Promise<JudgedMorning> {
  const { network, gauges, range } = morning
  const learned = await learnedModel(ledger, { networkId: network.id, gauges, range, ...(signal && { signal }) })
  return keptOrJudged(ledger, morning, learned)
}

/** The same morning as it was reported, nothing decided yet. */
export function judgedUndecided(ledger: Ledger, judged: JudgedMorning): JudgedMorning {
  if (judged.morning.decisions.length === 0) return judged
  return keptOrJudged(ledger, withDecisions(judged.morning, []), judged.learned)
}

/** The same morning as it would be judged had nobody decided about one reading. */
export function judgedWithout(ledger: Ledger, judged: JudgedMorning, readingId: string): JudgedMorning {
  const decisions = judged.morning.decisions.filter((decision) => decision.readingId !== readingId)
  return keptOrJudged(ledger, withDecisions(judged.morning, decisions), judged.learned)
}

/** The same morning as it would be judged with more decisions, the latest last. */
export function judgedIf(ledger: Ledger, judged: JudgedMorning, decisions: readonly Decision[]): JudgedMorning {
  if (decisions.length === 0) return judged
  return keptOrJudged(
    ledger,
    withDecisions(judged.morning, [...judged.morning.decisions, ...decisions]),
    judged.learned,
  )
}

function keptOrJudged(ledger: Ledger, morning: Morning, learned: LearnedModel): JudgedMorning {
  const cache = kept.get(ledger) ?? new RecentlyUsed<JudgedMorning>(KEPT)
  kept.set(ledger, cache)
  const stateKey = `${morning.substance}|${learned.version}`
  const before = cache.get(stateKey)
  if (before !== undefined) return { ...before, morning }
  const undecided = withDecisions(morning, [])
  const isUndecided = undecided.substance === morning.substance
  const judged = judgeMorning(morning, learned, stateKey, isUndecided ? null : keptOrJudged(ledger, undecided, learned))
  cache.set(stateKey, judged)
  return judged
}

/**
 * Pure: the table of the accepted record, judged.
 * @param from  the same morning undecided, so that only what a decision touches is judged again; null judges all
 */
export function judgeMorning(
  morning: Morning,
  learned: LearnedModel,
  stateKey: string,
  from: JudgedMorning | null,
): JudgedMorning {
  const accepted = acceptedRecord(morning.readings, morning.decisions)
  const firstDay = Math.max(morning.epochDay - windowDays.before, epochDayFromIso(morning.range.firstDay))
  const lastDay = Math.min(morning.epochDay + windowDays.after, epochDayFromIso(morning.range.lastDay))
  const { table, readingIds } = morningTable(
    accepted.filter((entry) => entry.settled || isComparable(morning.network, entry.reading)),
    learned.indexOf,
    firstDay,
    lastDay - firstDay + 1,
  )
  const ask = { fromDay: morning.epochDay, toDay: morning.epochDay, sameMorning: false }
  const judgement =
    from === null ? judge(learned.gaugeSet, table, learned.model, ask) : rejudge(from.judgement, table, ask)
  const odds = new Map<string, ReadingOdds>()
  for (let index = 0; index < judgement.count; index++) {
    const row = (judgement.day[index] ?? 0) - table.firstDay
    const readingId = readingIds[row * table.gaugeCount + (judgement.gauge[index] ?? 0)]
    if (readingId === undefined) continue
    const canTell = (judgement.neighbourCount[index] ?? 0) > 0
    odds.set(readingId, { standsOdds: judgement.pStands[index] ?? Number.NaN, canTell, index })
  }
  return { morning, learned, accepted, table, readingIds, judgement, odds, stateKey }
}

export function findingOf(judged: JudgedMorning, readingId: string): Finding | null {
  const found = judged.odds.get(readingId)
  return found === undefined ? null : findingAt(judged.judgement, found.index)
}

export function evidenceOf(judged: JudgedMorning, readingId: string): Evidence | null {
  const found = judged.odds.get(readingId)
  return found === undefined ? null : evidenceAt(judged.judgement, found.index)
}
