/** All that a screen or a letter needs to word one finding: explanations, neighbours, days around. */

import { scoreOfAmount } from '../climate/scores.ts'
import { neighbourWeights } from '../expectation/neighbourWeights.ts'
import { amountMoments, amountQuantile, dryChance, predictiveAt, scoreCdf } from '../expectation/predictive.ts'
import { explainReport, lawOf, sumWeights } from './explainReport.ts'
import {
  type DayAround,
  type Evidence,
  type Expectation,
  type Explanation,
  expectationLevels,
  type Finding,
} from './finding.ts'
import { impliedMm } from './impliedAmount.ts'
import type { Judgement } from './judgement.ts'
import { mostNeighbours } from './limits.ts'
import { type Mistake, mistakes } from './mistake.ts'
import { slipShareOf } from './slipShare.ts'
import type { Source } from './sources.ts'
import { stretchAmount } from './stretchAmount.ts'

/** Place of a gauge's report on an epoch day among the findings, or -1. */
export function findingIndex(judgement: Judgement, gauge: number, day: number): number {
  for (let c = 0; c < judgement.count; c++) if (judgement.day[c] === day && judgement.gauge[c] === gauge) return c
  return -1
}

export function findingAt(judgement: Judgement, index: number): Finding {
  const { latent } = judgement
  const gauge = judgement.gauge[index]!
  const day = judgement.day[index]!
  const row = day - latent.table.firstDay
  const i = row * latent.table.gaugeCount + gauge
  return {
    gauge,
    day,
    reportedMm: latent.table.amountMm[i]!,
    isTrace: latent.table.isTrace[i] === 1,
    spanDays: latent.table.spanDays[i]!,
    canTell: judgement.neighbourCount[index]! > 0,
    standsOdds: judgement.pStands[index]!,
    likeliestMistake: mistakes[judgement.mistake[index]!]!,
    likeliestMistakeOdds: judgement.pMistake[index]!,
    proposedMm: judgement.proposedMm[index]!,
    proposedFirstDay: judgement.proposedFirstDay[index]!,
    proposedLastDay: judgement.proposedLastDay[index]!,
    expectation: expectationAt(judgement, row, gauge),
    neighbourCount: judgement.neighbourCount[index]!,
  }
}

export function evidenceAt(judgement: Judgement, index: number): Evidence {
  const { latent } = judgement
  const finding = findingAt(judgement, index)
  const row = finding.day - latent.table.firstDay
  const explanations = explanationsOf(judgement, row, finding.gauge)
  const p = predictiveAt(latent, row, finding.gauge)
  const half = latent.model.climate.resolutionMm[finding.gauge]! / 2
  const isDry = finding.reportedMm <= half
  const atMost = scoreCdf(p, scoreOfAmount(p.scale, finding.reportedMm + half))
  const atLeast = 1 - (isDry ? 0 : scoreCdf(p, scoreOfAmount(p.scale, finding.reportedMm - half)))
  const lower = isDry ? dryChance(p) : atMost
  return {
    finding,
    explanations,
    neighbours: neighbourWeights(
      latent,
      judgement.hood,
      judgement.gauges,
      row,
      finding.gauge,
      mostNeighbours(judgement.gauges.ids.length),
      judgement.sameMorning,
    ),
    daysAround: daysAround(judgement, row, finding.gauge),
    tailChance: Math.min(lower, atLeast),
    tail: Math.min(lower, atLeast) > 0.1 ? 'middle' : lower < atLeast ? 'low' : 'high',
  }
}

function expectationAt(judgement: Judgement, row: number, gauge: number): Expectation {
  const law = lawOf(judgement.latent, row, gauge)
  const moments = { mean: 0, variance: 0 }
  const span = Math.max(1, judgement.latent.table.spanDays[row * judgement.latent.table.gaugeCount + gauge]!)
  let meanMm = 0
  for (let day = Math.max(0, row - span + 1); day <= row; day++) {
    amountMoments(predictiveAt(judgement.latent, day, gauge), moments)
    meanMm += moments.mean
  }
  return { dryChance: law.dry, meanMm, quantilesMm: expectationLevels.map((level) => law.quantile(level)) }
}

/** Every explanation with odds of at least 1 in 10,000, likeliest first; their odds sum to 1 but for the rest. */
export function explanationsOf(judgement: Judgement, row: number, gauge: number): Explanation[] {
  const { latent } = judgement
  const { table } = latent
  const i = row * table.gaugeCount + gauge
  const day = table.firstDay + row
  const span = Math.max(1, table.spanDays[i]!)
  const law = lawOf(latent, row, gauge)
  const sources = explainReport(latent, row, gauge)
  const scale = judgement.alone[i]! / sumWeights(sources)
  const strongest = new Map<string, { source: Source; odds: number; best: number }>()
  for (const source of sources) {
    const seen = strongest.get(source.kind)
    const odds = source.weight * scale
    if (seen === undefined) strongest.set(source.kind, { source, odds, best: odds })
    else {
      seen.odds += odds
      if (odds > seen.best) {
        seen.source = source
        seen.best = odds
      }
    }
  }
  const out: Explanation[] = []
  for (const { source, odds } of strongest.values()) {
    const detail = source.detail?.kind === 'repeated' ? { ...source.detail, earlierDay: day - 1 } : source.detail
    out.push({
      kind: source.kind,
      odds,
      impliedMm: impliedMm(law, source, 0.5),
      impliedP10Mm: impliedMm(law, source, 0.1),
      impliedP90Mm: impliedMm(law, source, 0.9),
      firstDay: day - span + 1,
      lastDay: day,
      detail,
    })
  }
  const stretched = stretchExplanations(judgement, row, gauge)
  // A habit's part of a stretch is no mistake: it stands.
  out[0]!.odds += stretched.habitOdds
  out.push(...stretched.explanations)
  return out.filter((one) => one.kind === 'stands' || one.odds >= 1e-4).sort((a, b) => b.odds - a.odds)
}

function stretchExplanations(
  judgement: Judgement,
  row: number,
  gauge: number,
): { explanations: Explanation[]; habitOdds: number } {
  let habitOdds = 0
  const { latent } = judgement
  const { table } = latent
  const n = table.gaugeCount
  const byKind = new Map<Mistake, { odds: number; best: number; explanation: Explanation }>()
  for (const { stretch, chance: whole } of judgement.covering.get(row * n + gauge) ?? []) {
    const chance = whole * slipShareOf(latent, gauge, stretch)
    habitOdds += whole - chance
    const kind: Mistake = stretch.kind === 'carried' ? 'carried' : 'day'
    const amount = stretchAmount(latent, stretch, row, gauge)
    const otherRow =
      stretch.kind === 'late' ? (row === stretch.from ? row + 1 : row - 1) : row === stretch.to ? row - 1 : row + 1
    const reported = table.amountMm[otherRow * n + gauge]!
    const explanation: Explanation = {
      kind,
      odds: chance,
      impliedMm: amount.amountMm,
      impliedP10Mm: amount.amountMm,
      impliedP90Mm: amount.amountMm,
      firstDay: amount.firstDay,
      lastDay: amount.lastDay,
      detail:
        kind === 'carried'
          ? {
              kind: 'carried',
              endsOn: table.firstDay + stretch.to,
              totalMm: table.amountMm[stretch.to * n + gauge]!,
              dayCount: stretch.to - stretch.from + 1,
            }
          : {
              kind: 'day',
              otherDay: table.firstDay + otherRow,
              otherReportedMm: Number.isNaN(reported) ? null : reported,
            },
    }
    const seen = byKind.get(kind)
    if (seen === undefined) byKind.set(kind, { odds: chance, best: chance, explanation })
    else {
      seen.odds += chance
      if (chance > seen.best) {
        seen.best = chance
        seen.explanation = explanation
      }
    }
  }
  return { explanations: [...byKind.values()].map(({ odds, explanation }) => ({ ...explanation, odds })), habitOdds }
}

function daysAround(judgement: Judgement, row: number, gauge: number): DayAround[] {
  const { table } = judgement.latent
  const out: DayAround[] = []
  for (let r = Math.max(0, row - 4); r <= Math.min(table.dayCount - 1, row + 2); r++) {
    if (judgement.sameMorning && r > row) break
    const reported =
      table.spanDays[r * table.gaugeCount + gauge]! > 0 ? table.amountMm[r * table.gaugeCount + gauge]! : null
    const p = predictiveAt(judgement.latent, r, gauge)
    out.push({
      day: table.firstDay + r,
      reportedMm: reported,
      expectedP10Mm: amountQuantile(p, 0.1),
      expectedP50Mm: amountQuantile(p, 0.5),
      expectedP90Mm: amountQuantile(p, 0.9),
    })
  }
  return out
}
