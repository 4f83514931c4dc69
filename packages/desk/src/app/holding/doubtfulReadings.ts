/**
 * Readings of the past that the review doubts and nobody has decided. Judged are the mornings that a total or an extreme can
 * hang on: all of a month, of a year those with most. Kept by the state of the ledger: on the first of a month many ask.
 */
import { epochDayFromIso, isoFromEpochDay, tableRows } from '@gaugewright/science'
import type { Ledger, NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { historyTable } from '../model/historyTable.ts'
import { type LearnedModel, learnedModel } from '../model/learnedModel.ts'
import { decisionsInForce } from '../morning/decisionsInForce.ts'
import { RecentlyUsed } from '../morning/recentlyUsed.ts'
import { judgeStretches } from '../rule/judgeStretches.ts'
import type { Past } from './pastOf.ts'

export interface DoubtfulReading {
  gaugeId: string
  /** Epoch day on which it ends. */
  day: number
}

const MOST_MORNINGS = 62
/** Of those, chosen by the largest single amount; the others by the largest sum. */
const BY_AMOUNT_SHARE = 2 / 3
const CONTEXT_DAYS = 12
const KEPT = 16
const kept = new WeakMap<Ledger, RecentlyUsed<Promise<readonly DoubtfulReading[]>>>()

export async function doubtfulReadings(
  { ledger }: Pick<Ports, 'ledger'>,
  network: NetworkSettings,
  past: Past,
  firstAsked: number,
  lastAsked: number,
): Promise<readonly DoubtfulReading[]> {
  const [first, last] = [Math.max(firstAsked, past.firstDay), Math.min(lastAsked, past.lastDay)]
  const range = await ledger.dayRange(network.id)
  if (range === null || first > last) return []
  const learned = await learnedModel(ledger, { networkId: network.id, gauges: past.gauges, range })
  const decisions = await ledger.decisions(network.id, isoFromEpochDay(first), isoFromEpochDay(last))
  const state = `${learned.version} ${range.stored} ${network.docketBelow} ${decisions.length} ${decisions.at(-1)?.id}`
  const key = `${network.id} ${state} ${first} ${last}`
  const cache = kept.get(ledger) ?? new RecentlyUsed<Promise<readonly DoubtfulReading[]>>(KEPT)
  kept.set(ledger, cache)
  const known = cache.get(key)
  if (known !== undefined) return await known
  const decided = new Set(decisionsInForce(decisions).keys())
  const found = judgedDoubtful(ledger, { network, past, learned, decided, first, last })
  cache.set(key, found)
  found.catch(() => cache.delete(key))
  return await found
}

interface ToJudge {
  network: NetworkSettings
  past: Past
  learned: LearnedModel
  /** Ids of readings that somebody decided about: they stand as decided. */
  decided: ReadonlySet<string>
  first: number
  last: number
}

async function judgedDoubtful(
  ledger: Ledger,
  { network, past, learned, decided, first, last }: ToJudge,
): Promise<DoubtfulReading[]> {
  const [from, to] = [isoFromEpochDay(first - CONTEXT_DAYS), isoFromEpochDay(last)]
  const table = await historyTable(ledger, network.id, learned.indexOf, from, to)
  const stretches = runsOf(weightyDays(past, first, last)).map(([fromDay, toDay]) => ({
    dayCount: toDay - fromDay + 1,
    make: async () => {
      const firstRow = Math.max(0, fromDay - CONTEXT_DAYS - table.firstDay)
      return { table: tableRows(table, firstRow, toDay - table.firstDay - firstRow + 1), fromDay, toDay }
    },
  }))
  const parts = await judgeStretches({ gauges: learned.gaugeSet, model: learned.model }, stretches)
  const settled = await cellsOf(ledger, network, decided, first, last)
  const idOf = new Map([...learned.indexOf].map(([id, column]) => [column, id]))
  const doubtful: DoubtfulReading[] = []
  for (const { day, gauge, pStands } of parts) {
    for (const [at, odds] of pStands.entries()) {
      const one = { gaugeId: idOf.get(gauge[at]!)!, day: day[at]! }
      if (odds < network.docketBelow && !settled.has(`${one.gaugeId} ${one.day}`)) doubtful.push(one)
    }
  }
  return doubtful
}

async function cellsOf(
  ledger: Ledger,
  network: NetworkSettings,
  readings: ReadonlySet<string>,
  first: number,
  last: number,
): Promise<Set<string>> {
  const cells = new Set<string>()
  if (readings.size === 0) return cells
  const [from, to] = [isoFromEpochDay(first), isoFromEpochDay(last)]
  for await (const { readingId, gaugeId, lastDay } of ledger.readingAmounts(network.id, from, to)) {
    if (readings.has(readingId)) cells.add(`${gaugeId} ${epochDayFromIso(lastDay)}`)
  }
  return cells
}

/** Pure: the days to judge, ascending. */
export function weightyDays(
  { table, firstDay }: Pick<Past, 'table' | 'firstDay'>,
  first: number,
  last: number,
): number[] {
  const days = Array.from({ length: last - first + 1 }, (_, back) => first + back)
  if (days.length <= MOST_MORNINGS) return days
  const most = new Map<number, number>()
  const sum = new Map<number, number>()
  for (const day of days) {
    const row = (day - firstDay) * table.gaugeCount
    let [highest, all] = [0, 0]
    for (let gauge = 0; gauge < table.gaugeCount; gauge++) {
      if (table.spanDays[row + gauge] === 0) continue
      const amountMm = table.amountMm[row + gauge]!
      all += amountMm
      highest = Math.max(highest, amountMm)
    }
    most.set(day, highest)
    sum.set(day, all)
  }
  const by = (of: Map<number, number>) => [...days].sort((a, b) => of.get(b)! - of.get(a)!)
  const chosen = new Set(by(most).slice(0, Math.round(MOST_MORNINGS * BY_AMOUNT_SHARE)))
  for (const day of by(sum)) {
    if (chosen.size >= MOST_MORNINGS) break
    chosen.add(day)
  }
  return [...chosen].sort((a, b) => a - b)
}

/** Days side by side, at most half of all together, so that two threads share them. */
function runsOf(days: readonly number[]): [number, number][] {
  const longest = Math.max(1, Math.ceil(days.length / 2))
  const runs: [number, number][] = []
  for (const day of days) {
    const run = runs.at(-1)
    if (run !== undefined && run[1] === day - 1 && day - run[0] < longest) run[1] = day
    else runs.push([day, day])
  }
  return runs
}
