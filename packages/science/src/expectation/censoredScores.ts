import { type Climate, monthOfEpochDay } from '../climate/climate.ts'
import { type ScoreScale, scoreOfAmount, scoreScale } from '../climate/scores.ts'
import type { DailyTable } from '../network/dailyTable.ts'

/**
 * Normal scores of the latest days of a table, a dry day at the mean score of its dry days; NaN where nothing was
 * reported. Index (day from the first used) * gaugeCount + gauge.
 */
export function censoredScores(
  climate: Climate,
  table: DailyTable,
  mostDays: number,
): { value: Float32Array; dayCount: number; meanThreshold: Float64Array } {
  const n = table.gaugeCount
  const dayCount = Math.min(mostDays, table.dayCount)
  const start = table.dayCount - dayCount
  const value = new Float32Array(dayCount * n).fill(Number.NaN)
  const scales: (ScoreScale | undefined)[] = new Array(n * 12)
  const meanThreshold = new Float64Array(n)
  for (let g = 0; g < n; g++) for (let m = 0; m < 12; m++) scales[g * 12 + m] = scoreScale(climate, g, m)
  for (let g = 0; g < n; g++) {
    for (let m = 0; m < 12; m++) meanThreshold[g]! += scales[g * 12 + m]!.dryThreshold / 12
  }
  for (let d = 0; d < dayCount; d++) {
    const month = monthOfEpochDay(table.firstDay + start + d)
    for (let g = 0; g < n; g++) {
      const i = (start + d) * n + g
      if (table.spanDays[i] !== 1) continue
      const scale = scales[g * 12 + month]!
      const score = scoreOfAmount(scale, table.amountMm[i]!)
      if (score > scale.dryThreshold) value[d * n + g] = score
      else {
        const c = scale.dryThreshold
        const share = climate.dryShare[g * 12 + month]!
        value[d * n + g] = (-Math.exp((-c * c) / 2) * 0.3989422804014327) / share
      }
    }
  }
  return { value, dayCount, meanThreshold }
}
