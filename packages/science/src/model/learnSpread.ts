/**
 * Fit the calibration of the predictive distribution to the network's own readings: penalised likelihood of each
 * reading's cell, leave-one-out, on blocks of days spread evenly over the history. Each reading counts as far as it
 * stands under the fit before, by all its explanations, so that mistakes do not widen the tails.
 */
import { predictiveOf, scoreCdf, scoreMass } from '../expectation/predictive.ts'
import { dailyLaw } from '../mistakes/amountLaw.ts'
import { sumWeights } from '../mistakes/explainReport.ts'
import { sourcesOf } from '../mistakes/sources.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { descend } from '../stats/descend.ts'
import type { Model, Spread } from './model.ts'
import { type Cells, sampleCells } from './spreadCells.ts'

/** Where a network has no history of its own: rounded from several climates; common practice. */
export const usualSpread: Spread = {
  shift: 0.05,
  slope: 0.92,
  curve: 0.03,
  logSd: -0.35,
  monthLogSd: new Array<number>(12).fill(0),
  wetLogLow: -0.1,
  wetLogHigh: 0,
  variancePower: 1,
  surroundingsPower: 0.3,
  level: 0.2,
  levelCurve: -0.08,
  shareLow: 0.2,
  shareHigh: 0.2,
  wideLow: 2.2,
  wideHigh: 1.8,
  wideLevel: 0,
  skew: 0.1,
}

/** How far each number may stray from the usual before the likelihood must pay for it. */
const looseness: readonly number[] = [0.15, 0.15, 0.08, 0.4, 0.4, 0.3, 0.3, 0.15, 0.8, 0.5, 0.5, 0.2, 0.2, 0.8]
/** Readings of one day are alike: each counts as this part of an independent one. */
const independentShare = 0.1
const chanceOfAnything = 0.001
/** Turns of believing and fitting. */
const rounds = 3
const enoughDays = 30

export function learnSpread(gauges: GaugeSet, history: DailyTable, model: Model): Spread {
  if (history.dayCount < enoughDays || gauges.ids.length < 4) return usualSpread
  const cells = sampleCells(gauges, history, model)
  if (cells.count < 300) return usualSpread
  const usual = toNumbers(usualSpread)
  const weight = independentShare * cells.count
  let at: ArrayLike<number> = usual
  for (let round = 0; round < rounds; round++) {
    believe(cells, fromNumbers(at), model)
    at = descend(
      (x) => {
        let penalty = 0
        for (let k = 0; k < x.length; k++) penalty += 0.5 * ((x[k]! - usual[k]!) / looseness[k]!) ** 2
        return penalty / weight - meanLogLikelihood(cells, fromNumbers(x))
      },
      at,
      { scales: looseness, mostSteps: 25, tolerance: 1e-6 },
    ).at
  }
  return holdIntervals(cells, seasonal(cells, fromNumbers(at)))
}

/** How far each reading stands under a calibration: mistakes shall not teach the tails. */
function believe(cells: Cells, spread: Spread, model: Model): void {
  for (let k = 0; k < cells.count; k++) {
    const p = predictiveOf(cells.mean[k]!, cells.variance[k]!, cells.surroundings[k]!, cells.scale[k]!, spread)
    const sources = sourcesOf(cells.report[k]!, dailyLaw(p), model.mistakeRate)
    cells.stands[k] = sources[0]!.weight / sumWeights(sources)
  }
}

function toNumbers(s: Spread): number[] {
  return [
    s.shift,
    s.slope,
    s.curve,
    s.logSd,
    s.variancePower,
    s.surroundingsPower,
    s.level,
    s.levelCurve,
    Math.log(s.shareLow / (1 - s.shareLow)),
    Math.log(s.wideLow - 1),
    Math.log(s.wideHigh - 1),
    s.wideLevel,
    s.skew,
    Math.log(s.shareHigh / (1 - s.shareHigh)),
  ]
}

function fromNumbers(x: ArrayLike<number>): Spread {
  return {
    shift: x[0]!,
    slope: x[1]!,
    curve: x[2]!,
    logSd: x[3]!,
    monthLogSd: usualSpread.monthLogSd,
    wetLogLow: 0,
    wetLogHigh: 0,
    variancePower: x[4]!,
    surroundingsPower: x[5]!,
    level: x[6]!,
    levelCurve: x[7]!,
    shareLow: 1 / (1 + Math.exp(-x[8]!)),
    shareHigh: 1 / (1 + Math.exp(-x[13]!)),
    wideLow: 1 + Math.exp(Math.min(1.6, x[9]!)),
    wideHigh: 1 + Math.exp(Math.min(1.6, x[10]!)),
    wideLevel: x[11]!,
    skew: x[12]!,
  }
}

const intervalShare = 0.9
/** Part of the way to exact intervals that is gone: the middle of the distribution must stay true as well. */
const centreShare = 0.6
/** Readings of properly wet days at which their own coverage weighs as much as the usual narrowing. */
const wetReadingsToTell = 60

/**
 * Narrow or widen each half of the main part so that each tail outside the central 90 % holds 5 % of the readings where
 * 1 mm or more is expected.
 */
function holdIntervals(cells: Cells, spread: Spread): Spread {
  const isWet = cells.scale.map((scale, k) => cells.mean[k]! >= scale.oneMmScore)
  const wetCount = isWet.filter(Boolean).length
  const blend = (own: number, usual: number): number =>
    (own * centreShare * wetCount + usual * wetReadingsToTell) / (wetCount + wetReadingsToTell)
  const hold = (key: 'wetLogLow' | 'wetLogHigh', side: 'below' | 'above'): number => {
    if (wetCount < 40) return usualSpread[key]
    const miss = (at: number): number =>
      Math.abs(outside(cells, { ...spread, [key]: at }, isWet)[side] - (1 - intervalShare) / 2)
    let best = 0
    for (let at = -0.6; at <= 0.6; at += 0.05) if (miss(at) < miss(best)) best = at
    return blend(best, usualSpread[key])
  }
  return { ...spread, wetLogLow: hold('wetLogLow', 'below'), wetLogHigh: hold('wetLogHigh', 'above') }
}

/** Shares of the readings below and above the central interval. */
function outside(cells: Cells, spread: Spread, isWet: readonly boolean[]): { below: number; above: number } {
  let below = 0
  let above = 0
  let count = 0
  for (let k = 0; k < cells.count; k++) {
    if (!isWet[k]) continue
    const p = predictiveOf(cells.mean[k]!, cells.variance[k]!, cells.surroundings[k]!, cells.scale[k]!, spread)
    const low = cells.low[k]!
    const isDry = low === Number.NEGATIVE_INFINITY
    // A dry report is below only if its whole chance lies in the tail.
    const share = scoreCdf(p, isDry ? cells.high[k]! : 0.5 * (low + cells.high[k]!))
    const weight = cells.stands[k]!
    count += weight
    if (share < (1 - intervalShare) / 2) below += weight
    else if (share > (1 + intervalShare) / 2 && !isDry) above += weight
  }
  return { below: below / Math.max(1, count), above: above / Math.max(1, count) }
}

/** How far a month's readings count for the months around it, by distance in months. */
const monthWeight = [1, 0.5, 0.15, 0, 0, 0, 0]
const monthLooseness = 0.3

/** Month by month, the widening that its readings ask for; golden section on the penalised likelihood. */
function seasonal(cells: Cells, spread: Spread): Spread {
  const monthLogSd = Array.from({ length: 12 }, (_, month) => {
    const weights = cells.scale.map((scale) => {
      const apart = Math.abs(scale.month - month)
      return monthWeight[Math.min(apart, 12 - apart)]!
    })
    const total = weights.reduce((sum, w) => sum + w, 0)
    if (total < 30) return 0
    const loss = (shift: number): number => {
      const moved = { ...spread, monthLogSd: new Array<number>(12).fill(shift) }
      const penalty = 0.5 * (shift / monthLooseness) ** 2
      return penalty / (independentShare * total) - meanLogLikelihood(cells, moved, weights)
    }
    return goldenSection(loss, -0.8, 0.8)
  })
  return { ...spread, monthLogSd }
}

function goldenSection(f: (x: number) => number, from: number, to: number): number {
  const part = (Math.sqrt(5) - 1) / 2
  let low = from
  let high = to
  for (let step = 0; step < 11; step++) {
    const a = high - part * (high - low)
    const b = low + part * (high - low)
    if (f(a) < f(b)) high = b
    else low = a
  }
  return (low + high) / 2
}

function meanLogLikelihood(cells: Cells, spread: Spread, weights?: readonly number[]): number {
  let sum = 0
  let total = 0
  for (let k = 0; k < cells.count; k++) {
    const weight = (weights === undefined ? 1 : weights[k]!) * cells.stands[k]!
    if (weight === 0) continue
    const p = predictiveOf(cells.mean[k]!, cells.variance[k]!, cells.surroundings[k]!, cells.scale[k]!, spread)
    const low = cells.low[k]!
    const anything = low === Number.NEGATIVE_INFINITY ? 0.3 : 0.2 * (cells.high[k]! - low)
    total += weight
    sum += weight * Math.log((1 - chanceOfAnything) * scoreMass(p, low, cells.high[k]!) + chanceOfAnything * anything)
  }
  return sum / total
}
