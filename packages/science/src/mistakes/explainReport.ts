/** The single-day explanations of one report in a latent table, with the law of what was expected. */

import type { LatentTable } from '../expectation/latentTable.ts'
import { amountMoments, dryChance, predictiveAt } from '../expectation/predictive.ts'
import type { Model } from '../model/model.ts'
import { type AmountLaw, dailyLaw, sumLaw } from './amountLaw.ts'
import { confirmedShares } from './confirmedShares.ts'
import { readerOf } from './readMass.ts'
import { type ReportSeen, type Source, sourcesOf } from './sources.ts'

export function gaugeRate(model: Model, gauge: number): number {
  return Math.min(0.3, model.mistakeRate * model.mistakeFactor[gauge]!)
}

/** Law of the amount that the report on a row stands for: its day, or the days of a declared total. */
export function lawOf(latent: LatentTable, row: number, gauge: number): AmountLaw {
  const span = latent.table.spanDays[row * latent.table.gaugeCount + gauge]!
  if (span <= 1) return dailyLaw(predictiveAt(latent, row, gauge))
  let mean = 0
  let variance = 0
  let dry = 1
  const moments = { mean: 0, variance: 0 }
  for (let day = Math.max(0, row - span + 1); day <= row; day++) {
    const p = predictiveAt(latent, day, gauge)
    amountMoments(p, moments)
    mean += moments.mean
    variance += moments.variance
    dry *= dryChance(p)
  }
  return sumLaw(mean, variance, dry)
}

/** What is seen of the report on a row, as its explanations need it. */
export function reportSeen(latent: LatentTable, row: number, gauge: number): ReportSeen {
  const { table, model } = latent
  const n = table.gaugeCount
  const i = row * n + gauge
  return {
    amountMm: table.amountMm[i]!,
    isTrace: table.isTrace[i] === 1,
    previousMm: row > 0 && table.spanDays[i - n] === 1 ? table.amountMm[i - n]! : Number.NaN,
    resolutionMm: model.climate.resolutionMm[gauge]!,
    reader: readerOf(model.climate.rounding, gauge),
    tubeMm: model.tubeMm,
  }
}

export function explainReport(latent: LatentTable, row: number, gauge: number): Source[] {
  const { table, model } = latent
  const report = reportSeen(latent, row, gauge)
  const isConfirmed = table.isConfirmed?.[row * table.gaugeCount + gauge] === 1
  const shares = isConfirmed ? confirmedShares(model.mistakeShare) : model.mistakeShare
  const sources = sourcesOf(report, lawOf(latent, row, gauge), gaugeRate(model, gauge), shares)
  // What a person has settled has one explanation left.
  return table.settled[row * table.gaugeCount + gauge] === 1 ? [{ ...sources[0]!, weight: 1 }] : sources
}

export function sumWeights(sources: readonly Source[]): number {
  let sum = 0
  for (const source of sources) sum += source.weight
  return Math.max(1e-300, sum)
}
