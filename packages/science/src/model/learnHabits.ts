/**
 * What each gauge is prone to, from its own latest reports: how many of its day slips and carried totals are a habit of
 * its hour rather than slips, and how many mistakes it makes against the others. The middle gauge sets what is usual.
 */
import { openLatentTable } from '../expectation/latentTable.ts'
import { explainReport, gaugeRate, lawOf } from '../mistakes/explainReport.ts'
import { hoodOf } from '../mistakes/judge.ts'
import { type Judgement, openJudgement } from '../mistakes/judgement.ts'
import { settleWhole } from '../mistakes/judgeWhole.ts'
import { dryShareOf } from '../mistakes/rates.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { latestRows } from '../network/tableRows.ts'
import type { Model } from './model.ts'

/** Reports looked at, at most: the latest. */
const mostReports = 120_000
const mostRate = 0.3
const enoughDays = 45
/** Reports at which a gauge's own count of stretches weighs as much as what is usual. */
const reportsToTell = 150
/** Exposed reports at which the network's own rate of mistakes weighs as much as the usual one. */
const exposedToTell = 300
/** Nature's own surprises pass for mistakes: the rate is not let further from the usual than this factor. */
const mostAgainstUsual = 1.3
/** One turn of the field is enough to count by. */
const rounds = 1

/** Sets `mistakeRate`, `slipShare` and `mistakeFactor` of the model. */
export function learnHabits(gauges: GaugeSet, history: DailyTable, model: Model): void {
  const n = gauges.ids.length
  const days = Math.min(history.dayCount, Math.floor(mostReports / n))
  if (days < enoughDays || n < 8) return
  const table = latestRows(history, days)
  const ask = { fromDay: table.firstDay, toDay: table.firstDay + days - 1, sameMorning: false }
  const judgement = openJudgement(gauges, openLatentTable(table, model), hoodOf(gauges, model), ask)
  settleWhole(judgement, ask, rounds)
  learnSlipShare(judgement, model)
  learnRates(judgement, model)
}

function learnSlipShare({ latent: { table }, alone }: Judgement, model: Model): void {
  const n = table.gaugeCount
  const reports = new Float64Array(n)
  const stretched = new Float64Array(n)
  for (let i = 0; i < alone.length; i++) {
    if (table.spanDays[i] !== 1) continue
    reports[i % n]! += 1
    stretched[i % n]! += 1 - alone[i]!
  }
  const usual = middle(stretched, reports)
  for (let g = 0; g < n; g++) {
    const trust = reports[g]! / (reports[g]! + reportsToTell)
    const own = trust * (stretched[g]! / Math.max(1, reports[g]!)) + (1 - trust) * usual
    model.slipShare[g] = Math.min(1, Math.max(0.1, usual / Math.max(1e-9, own)))
  }
}

/**
 * The overall rate and each gauge's factor on it, by EM over the single-day explanations: mistakes expected over the
 * reports in which one could have shown. The rate is shrunk to the usual one, the factors to 1 as a gamma distribution
 * whose spread is that of the gauges themselves.
 */
function learnRates({ latent, alone }: Judgement, model: Model): void {
  const { table } = latent
  const n = table.gaugeCount
  const shares = model.mistakeShare
  const dryShare = dryShareOf(shares)
  const cells: number[] = []
  for (let i = 0; i < alone.length; i++) if (table.spanDays[i] === 1 && latent.used[i]! > 0) cells.push(i)
  const stands = new Float64Array(cells.length)
  const wrong = new Float64Array(cells.length)
  const lost = new Float64Array(cells.length)
  const exposed = new Float64Array(n)
  cells.forEach((i, c) => {
    const gauge = i % n
    const row = (i - gauge) / n
    const sources = explainReport(latent, row, gauge)
    const rate = gaugeRate(model, gauge)
    lost[c] = sources[0]!.highMm <= 0 ? dryShare : 1
    stands[c] = sources[0]!.weight / (1 - rate * lost[c]!)
    for (let k = 1; k < sources.length; k++) wrong[c]! += sources[k]!.weight / rate
    const { dry } = lawOf(latent, row, gauge)
    exposed[gauge]! += alone[i]! * ((1 - dry) * (1 - shares.wetted) + dry * dryShare)
  })
  const allExposed = exposed.reduce((a, b) => a + b, 0)
  const usual = model.mistakeRate
  const expected = new Float64Array(n)
  let rate = usual
  let shape = 4
  for (let round = 0; round < 40; round++) {
    expected.fill(0)
    cells.forEach((i, c) => {
      const own = Math.min(mostRate, rate * model.mistakeFactor[i % n]!)
      const odds = own * wrong[c]!
      expected[i % n]! += (alone[i]! * odds) / ((1 - own * lost[c]!) * stands[c]! + odds + 1e-300)
    })
    const sum = expected.reduce((a, b) => a + b, 0)
    rate = (sum + exposedToTell * usual) / (allExposed + exposedToTell)
    rate = Math.min(mostAgainstUsual * usual, Math.max(usual, rate))
    const level = sum / allExposed
    shape = shapeOf(expected, exposed, level)
    for (let g = 0; g < n; g++)
      model.mistakeFactor[g] = Math.min(4, (expected[g]! + shape) / (exposed[g]! * level + shape))
  }
  model.mistakeRate = rate
}

/** Shape of the gamma distribution of factors by moments: the spread of counts beyond that of chance. */
function shapeOf(counts: Float64Array, exposed: Float64Array, level: number): number {
  let excess = 0
  let squares = 0
  for (let g = 0; g < counts.length; g++) {
    const mean = exposed[g]! * level
    excess += (counts[g]! - mean) ** 2 - mean
    squares += mean * mean
  }
  return Math.min(12, Math.max(1.5, squares / Math.max(1e-9, excess)))
}

/** Median rate over the gauges that report enough. */
function middle(sums: Float64Array, reports: Float64Array): number {
  const rates: number[] = []
  for (let g = 0; g < sums.length; g++) if (reports[g]! > 30) rates.push(sums[g]! / reports[g]!)
  rates.sort((a, b) => a - b)
  return rates.length === 0 ? 0 : rates[rates.length >> 1]!
}
