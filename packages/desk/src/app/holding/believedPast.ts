/**
 * The past without the readings that still wait for a decision: nothing that the review doubts goes out in a letter. Judged
 * are the mornings that a total or an extreme can hang on; all of a month, of a year those with most.
 */
import { epochDayFromIso, isoFromEpochDay, tableRows } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { historyTable } from '../model/historyTable.ts'
import { learnedModel } from '../model/learnedModel.ts'
import { decisionsInForce } from '../morning/decisionsInForce.ts'
import { judgeStretches } from '../rule/judgeStretches.ts'
import type { Past } from './pastOf.ts'

const MOST_MORNINGS = 62
/** Of those, chosen by the largest single amount; the others by the largest sum. */
const BY_AMOUNT_SHARE = 2 / 3
const CONTEXT_DAYS = 12

/** @returns the same past, its table a copy in which those readings are missing */
export async function believedPast(
  { ledger }: Pick<Ports, 'ledger'>,
  network: NetworkSettings,
  past: Past,
  firstAsked: number,
  lastAsked: number,
): Promise<{ believed: Past; doubted: number }> {
  const [first, last] = [Math.max(firstAsked, past.firstDay), Math.min(lastAsked, past.lastDay)]
  const range = await ledger.dayRange(network.id)
  if (range === null || first > last) return { believed: past, doubted: 0 }
  const learned = await learnedModel(ledger, { networkId: network.id, gauges: past.gauges, range })
  const from = isoFromEpochDay(first - CONTEXT_DAYS)
  const table = await historyTable(ledger, network.id, learned.indexOf, from, isoFromEpochDay(last))
  const stretches = runsOf(weightyDays(past, first, last)).map(([fromDay, toDay]) => ({
    dayCount: toDay - fromDay + 1,
    make: async () => {
      const firstRow = Math.max(0, fromDay - CONTEXT_DAYS - table.firstDay)
      return { table: tableRows(table, firstRow, toDay - table.firstDay - firstRow + 1), fromDay, toDay }
    },
  }))
  const parts = await judgeStretches({ gauges: learned.gaugeSet, model: learned.model }, stretches)
  const decided = await decidedCells({ ledger }, network, first, last)
  const columnOf = new Map(past.gauges.map(({ id }, column) => [learned.indexOf.get(id), { column, id }]))
  const spanDays = past.table.spanDays.slice()
  const amountMm = past.table.amountMm.slice()
  let doubted = 0
  for (const { day, gauge, pStands } of parts) {
    for (const [at, odds] of pStands.entries()) {
      const place = columnOf.get(gauge[at]!)
      if (odds >= network.docketBelow || place === undefined || decided.has(`${place.id} ${day[at]}`)) continue
      const cell = (day[at]! - past.firstDay) * past.table.gaugeCount + place.column
      if (spanDays[cell] === 0) continue
      spanDays[cell] = 0
      amountMm[cell] = Number.NaN
      doubted++
    }
  }
  return { believed: { ...past, table: { ...past.table, spanDays, amountMm } }, doubted }
}

/** What somebody has decided stands as decided. */
async function decidedCells(
  { ledger }: Pick<Ports, 'ledger'>,
  network: NetworkSettings,
  first: number,
  last: number,
): Promise<Set<string>> {
  const [from, to] = [isoFromEpochDay(first), isoFromEpochDay(last)]
  const inForce = decisionsInForce(await ledger.decisions(network.id, from, to))
  const decided = new Set<string>()
  if (inForce.size === 0) return decided
  for await (const { readingId, gaugeId, lastDay } of ledger.readingAmounts(network.id, from, to)) {
    if (inForce.has(readingId)) decided.add(`${gaugeId} ${epochDayFromIso(lastDay)}`)
  }
  return decided
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
