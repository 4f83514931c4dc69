/**
 * Fit the calibration of the predictive distribution to the network's own readings: penalised likelihood of each
 * reading's cell, leave-one-out, on blocks of days spread evenly over the history. Robust to mistakes among them: every
 * reading may be anything with a small chance.
 */

import type { ScoreScale } from '../climate/scores.ts'
import { openLatentTable } from '../expectation/latentTable.ts'
import { buildNeighbourhood } from '../expectation/neighbourhood.ts'
import { predictiveOf, scoreMass } from '../expectation/predictive.ts'
import { computeCavity, type SweepAsk, sweepDay } from '../expectation/sweepDay.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { tableRows } from '../network/tableRows.ts'
import { minimise } from '../stats/minimise.ts'
import type { Model, Spread } from './model.ts'

/** Where a network has no history of its own: rounded from several climates; common practice. */
export const usualSpread: Spread = {
  shift: 0.05,
  slope: 0.92,
  curve: 0.03,
  logSd: -0.35,
  variancePower: 1,
  surroundingsPower: 0.3,
  level: 0.2,
  levelCurve: -0.08,
  wideShare: 0.2,
  wideFactor: 2.2,
}

/** How far each number may stray from the usual before the likelihood must pay for it. */
const looseness: readonly number[] = [0.15, 0.15, 0.08, 0.4, 0.4, 0.3, 0.3, 0.15, 0.8, 0.5]
/** Readings of one day are alike: each counts as this part of an independent one. */
const independentShare = 0.1
const chanceOfAnything = 0.01
const blockDays = 4
const mostCells = 9000
const enoughDays = 30

interface Cells {
  mean: Float64Array
  variance: Float64Array
  surroundings: Float64Array
  low: Float64Array
  high: Float64Array
  scale: ScoreScale[]
  count: number
}

export function learnSpread(gauges: GaugeSet, history: DailyTable, model: Model): Spread {
  if (history.dayCount < enoughDays || gauges.ids.length < 4) return usualSpread
  const cells = sampleCells(gauges, history, model)
  if (cells.count < 300) return usualSpread
  const start = toNumbers(usualSpread)
  const weight = independentShare * cells.count
  const best = minimise(
    (at) => {
      let penalty = 0
      for (let k = 0; k < at.length; k++) penalty += 0.5 * ((at[k]! - start[k]!) / looseness[k]!) ** 2
      return penalty / weight - meanLogLikelihood(cells, fromNumbers(at))
    },
    start,
    { steps: looseness.map((step) => step / 2), mostEvaluations: 500, tolerance: 1e-5 },
  )
  return fromNumbers(best.at)
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
    Math.log(s.wideShare / (1 - s.wideShare)),
    Math.log(s.wideFactor - 1),
  ]
}

function fromNumbers(x: ArrayLike<number>): Spread {
  return {
    shift: x[0]!,
    slope: x[1]!,
    curve: x[2]!,
    logSd: x[3]!,
    variancePower: x[4]!,
    surroundingsPower: x[5]!,
    level: x[6]!,
    levelCurve: x[7]!,
    wideShare: 1 / (1 + Math.exp(-x[8]!)),
    wideFactor: 1 + Math.exp(Math.min(1.6, x[9]!)),
  }
}

function meanLogLikelihood(cells: Cells, spread: Spread): number {
  let sum = 0
  for (let k = 0; k < cells.count; k++) {
    const p = predictiveOf(cells.mean[k]!, cells.variance[k]!, cells.surroundings[k]!, cells.scale[k]!, spread)
    const low = cells.low[k]!
    const anything = low === Number.NEGATIVE_INFINITY ? 0.3 : 0.2 * (cells.high[k]! - low)
    sum += Math.log((1 - chanceOfAnything) * scoreMass(p, low, cells.high[k]!) + chanceOfAnything * anything)
  }
  return sum / cells.count
}

/** Leave-one-out cavities of readings from even blocks of days; the middle days of each block are taken. */
function sampleCells(gauges: GaugeSet, history: DailyTable, model: Model): Cells {
  const n = gauges.ids.length
  const size = Math.min(40, n + 8)
  const hood = buildNeighbourhood(gauges, model.correlation, size)
  const perBlock = n * (blockDays - 2)
  const blocks = Math.min(Math.floor(history.dayCount / blockDays), Math.max(12, Math.ceil((3 * mostCells) / perBlock)))
  const step = history.dayCount / blocks
  const cells: Cells = {
    mean: new Float64Array(mostCells),
    variance: new Float64Array(mostCells),
    surroundings: new Float64Array(mostCells),
    low: new Float64Array(mostCells),
    high: new Float64Array(mostCells),
    scale: [],
    count: 0,
  }
  let skip = 0
  const keepEvery = Math.max(1, Math.floor((blocks * perBlock * 0.8) / mostCells))
  for (let b = 0; b < blocks; b++) {
    const first = Math.floor(b * step)
    const block = tableRows(history, first, blockDays)
    const latent = openLatentTable(block, model)
    const sweep: SweepAsk = { most: Math.min(32, size), latestRow: blockDays - 1, damping: 0.8 }
    for (let pass = 0; pass < 3; pass++) for (let row = 0; row < blockDays; row++) sweepDay(latent, hood, row, sweep)
    for (let row = 1; row < blockDays - 1; row++) {
      for (let g = 0; g < n; g++) {
        const i = row * n + g
        if (block.spanDays[i] !== 1 || skip++ % keepEvery !== 0 || cells.count >= mostCells) continue
        computeCavity(latent, hood, row, g, sweep)
        if (latent.used[i]! < 2) continue
        const k = cells.count++
        cells.mean[k] = latent.cavityMean[i]!
        cells.variance[k] = latent.cavityVariance[i]!
        cells.surroundings[k] = latent.spread[i]!
        cells.low[k] = latent.low[i]!
        cells.high[k] = latent.high[i]!
        cells.scale.push(latent.scales[g * 12 + latent.monthOfDay[row]!]!)
      }
    }
  }
  return cells
}
