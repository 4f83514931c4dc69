/**
 * What each gauge is prone to, from its own latest reports: how many of its day slips and carried totals are a habit of
 * its hour rather than slips, and how many mistakes it makes against the others. The middle gauge sets what is usual.
 */
import { judge } from '../mistakes/judge.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { latestRows } from '../network/tableRows.ts'
import type { Model } from './model.ts'

/** Reports looked at, at most; habits show in a few hundred days. */
const mostReports = 30_000
const enoughDays = 90
/** Reports, and mistakes, at which a gauge's own count weighs as much as what is usual. */
const reportsToTell = 150
const mistakesToTell = 4

/** Sets `slipShare` and `mistakeFactor` of the model. */
export function learnHabits(gauges: GaugeSet, history: DailyTable, model: Model): void {
  const n = gauges.ids.length
  const days = Math.min(history.dayCount, Math.floor(mostReports / n))
  if (days < enoughDays || n < 8) return
  const table = latestRows(history, days)
  const judgement = judge(gauges, table, model, {
    fromDay: table.firstDay,
    toDay: table.firstDay + days - 1,
    sameMorning: false,
  })
  const reports = new Float64Array(n)
  const stretched = new Float64Array(n)
  const alone = new Float64Array(n)
  for (let c = 0; c < judgement.count; c++) {
    const g = judgement.gauge[c]!
    reports[g]! += 1
    let inStretch = 0
    const cell = (judgement.day[c]! - table.firstDay) * n + g
    for (const { chance } of judgement.covering.get(cell) ?? []) inStretch += chance
    stretched[g]! += inStretch
    alone[g]! += Math.max(0, 1 - judgement.pStands[c]! - inStretch)
  }
  const usualStretched = middle(stretched, reports)
  const usualAlone = middle(alone, reports)
  for (let g = 0; g < n; g++) {
    const trust = reports[g]! / (reports[g]! + reportsToTell)
    const own = trust * (stretched[g]! / Math.max(1, reports[g]!)) + (1 - trust) * usualStretched
    model.slipShare[g] = Math.min(1, Math.max(0.1, usualStretched / Math.max(1e-9, own)))
    const expected = usualAlone * reports[g]!
    model.mistakeFactor[g] = Math.min(4, (alone[g]! + mistakesToTell) / (expected + mistakesToTell))
  }
}

/** Median rate over the gauges that report enough. */
function middle(sums: Float64Array, reports: Float64Array): number {
  const rates: number[] = []
  for (let g = 0; g < sums.length; g++) if (reports[g]! > 30) rates.push(sums[g]! / reports[g]!)
  rates.sort((a, b) => a - b)
  return rates.length === 0 ? 0 : rates[rates.length >> 1]!
}
