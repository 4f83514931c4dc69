/** Learn the correlation of reports from pairs of gauges with common history; broad defaults where there is little. */
import type { Climate } from '../climate/climate.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { censoredScores } from './censoredScores.ts'
import { type Correlation, noPairs } from './correlation.ts'
import { learnDistance } from './learnDistance.ts'
import { learnFit } from './learnFit.ts'
import { learnOffsets, learnPersistence } from './learnOffsets.ts'
import { nearPairs } from './nearPairs.ts'
import { blendPairs, enoughDays, seePairs } from './pairHistory.ts'

/** Days of history used at most, latest first: habits change, and more adds little. */
const daysUsed = 3650

/** Usual for daily rain: fronts 100-150 km, showers 20-50 km (common practice). */
export function usualCorrelation(gaugeCount: number): Correlation {
  return {
    shortShare: 0.3,
    shortRangeM: 25_000,
    longShare: 0.45,
    longRangeM: 150_000,
    plateau: 0.15,
    persistence: 0.1,
    fit: new Float64Array(gaugeCount).fill(1),
    offsetDays: new Float64Array(gaugeCount),
    pairs: noPairs(),
  }
}

export function learnCorrelation(gauges: GaugeSet, climate: Climate, history: DailyTable): Correlation {
  const n = gauges.ids.length
  const correlation = usualCorrelation(n)
  if (history.dayCount < enoughDays || n < 3) return correlation
  const scores = censoredScores(climate, history, daysUsed)
  const pairs = seePairs(nearPairs(gauges, n <= 150 ? n : 30), scores.value, scores.meanThreshold, n, scores.dayCount)
  if (pairs.length < 3) return correlation
  learnOffsets(correlation, pairs, n)
  learnPersistence(correlation, pairs)
  learnDistance(correlation, pairs)
  learnFit(correlation, pairs, n)
  correlation.pairs = blendPairs(gauges, correlation, pairs)
  return correlation
}
