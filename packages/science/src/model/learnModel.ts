import { learnClimate } from '../climate/learnClimate.ts'
import { learnCorrelation } from '../expectation/learnCorrelation.ts'
import { mistakeShare } from '../mistakes/rates.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { latestRows } from '../network/tableRows.ts'
import { learnHabits } from './learnHabits.ts'
import { learnSpread, usualSpread } from './learnSpread.ts'
import { type Model, modelVersion } from './model.ts'

/**
 * Chance that a report is wrong where a mistake could show. One in eleven of photographed volunteer readings was, half
 * of them by too little to matter [Davids2019].
 */
const usualMistakeRate = 0.045
/** Days of history that the calibration is learned from at most, latest first: networks and observers change. */
const daysUsed = 3650
/** 1.00 in (maker's data sheets of 4-inch gauges). */
const usualTubeMm = 25.4

/** Learn a network from its history: any length, none included (then usual values stand in). */
export function learnModel(gauges: GaugeSet, history: DailyTable): Model {
  const climate = learnClimate(gauges, history)
  const model: Model = {
    version: modelVersion,
    climate,
    correlation: learnCorrelation(gauges, climate, history),
    spread: usualSpread,
    mistakeRate: usualMistakeRate,
    mistakeShare,
    mistakeFactor: new Float64Array(gauges.ids.length).fill(1),
    slipShare: new Float64Array(gauges.ids.length).fill(1),
    tubeMm: usualTubeMm,
  }
  model.spread = learnSpread(gauges, latestRows(history, Math.min(history.dayCount, daysUsed)), model)
  learnHabits(gauges, history, model)
  return model
}
