/**
 * What each gauge is prone to, from its own latest reports: how many of its day slips and carried totals are a habit of
 * its hour rather than slips, and how many mistakes it makes against the others. The middle gauge sets what is usual.
 */
import { explainReport, gaugeRate, lawOf } from '../mistakes/explainReport.ts'
import { judge } from '../mistakes/judge.ts'
import type { Judgement } from '../mistakes/judgement.ts'
import { dryMistakeShare, mistakeShare } from '../mistakes/rates.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { latestRows } from '../network/tableRows.ts'
import type { Model } from './model.ts'

/** Reports looked at, at most; habits show in a few hundred days. */
const mostReports = 30_000
const enoughDays = 45
/** Reports, and mistakes, at which a gauge's own count weighs as much as what is usual. */
const reportsToTell = 150
const mistakesToTell = 4

/** Exposed reports at which the network's own rate of mistakes weighs as much as the usual one. */
const exposedToTell = 300
/** Nature's own surprises pass for mistakes: the rate is not let further from the usual than this factor. */
const mostAgainstUsual = 1.3

/** Sets `mistakeRate`, `slipShare` and `mistakeFactor` of the model. */
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
  learnRate(judgement, model)
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

/**
 * The overall rate by maximum likelihood (EM), shrunk to the usual one: mistakes expected over the reports where one
 * could have shown. Single-day explanations only.
 */
function learnRate(judgement: Judgement, model: Model): void {
  const { latent } = judgement
  const before = model.mistakeRate
  const stands = new Float64Array(judgement.count)
  const wrong = new Float64Array(judgement.count)
  const lost = new Float64Array(judgement.count)
  let exposed = 0
  for (let c = 0; c < judgement.count; c++) {
    const gauge = judgement.gauge[c]!
    const row = judgement.day[c]! - latent.table.firstDay
    const sources = explainReport(latent, row, gauge)
    const rate = gaugeRate(model, gauge)
    const isZero = sources[0]!.highMm <= 0
    lost[c] = isZero ? dryMistakeShare : 1
    stands[c] = sources[0]!.weight / (1 - rate * lost[c]!)
    for (let k = 1; k < sources.length; k++) wrong[c]! += sources[k]!.weight / rate
    const { dry } = lawOf(latent, row, gauge)
    exposed += (1 - dry) * (1 - mistakeShare.wetted) + dry * dryMistakeShare
  }
  let rate = before
  for (let round = 0; round < 40; round++) {
    let expected = exposedToTell * before
    for (let c = 0; c < judgement.count; c++)
      expected += (rate * wrong[c]!) / ((1 - rate * lost[c]!) * stands[c]! + rate * wrong[c]! + 1e-300)
    rate = Math.min(0.3, Math.max(0.005, expected / (exposed + exposedToTell)))
  }
  model.mistakeRate = Math.min(mostAgainstUsual * before, Math.max(before / mostAgainstUsual, rate))
}

/** Median rate over the gauges that report enough. */
function middle(sums: Float64Array, reports: Float64Array): number {
  const rates: number[] = []
  for (let g = 0; g < sums.length; g++) if (reports[g]! > 30) rates.push(sums[g]! / reports[g]!)
  rates.sort((a, b) => a - b)
  return rates.length === 0 ? 0 : rates[rates.length >> 1]!
}
