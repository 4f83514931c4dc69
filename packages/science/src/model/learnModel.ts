import { learnClimate } from '../climate/learnClimate.ts'
import { learnCorrelation } from '../expectation/learnCorrelation.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { type Model, modelVersion } from './model.ts'

/** Learn a network from its history: any length, none included (then usual values stand in). */
export function learnModel(gauges: GaugeSet, history: DailyTable): Model {
  const climate = learnClimate(gauges, history)
  return {
    version: modelVersion,
    climate,
    correlation: learnCorrelation(gauges, climate, history),
    spread: { factor: 1, power: 0.5, wideShare: 0.06, wideFactor: 2.2 },
    mistakeRate: 0.03,
    mistakeFactor: new Float64Array(gauges.ids.length).fill(1),
    tubeMm: 25.4,
  }
}
