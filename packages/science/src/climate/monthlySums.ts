/** Sums of a history by gauge and month, beside those of the whole network on the same days. */
import type { DailyTable } from '../network/dailyTable.ts'
import { monthOfEpochDay } from './climate.ts'

/** Index gauge * 12 + month; those of the network index month. Roots of mm. */
export interface MonthlySums {
  days: Float64Array
  wet: Float64Array
  dry: Float64Array
  dryOfNetwork: Float64Array
  root: Float64Array
  rootOfNetwork: Float64Array
  logWet: Float64Array
  networkDays: Float64Array
  networkDry: Float64Array
}

export function sumByGaugeAndMonth(history: DailyTable, resolutionMm: Float64Array, n: number): MonthlySums {
  const cells = n * 12
  const sums: MonthlySums = {
    days: new Float64Array(cells),
    wet: new Float64Array(cells),
    dry: new Float64Array(cells),
    dryOfNetwork: new Float64Array(cells),
    root: new Float64Array(cells),
    rootOfNetwork: new Float64Array(cells),
    logWet: new Float64Array(12),
    networkDays: new Float64Array(12),
    networkDry: new Float64Array(12),
  }
  for (let d = 0; d < history.dayCount; d++) {
    const month = monthOfEpochDay(history.firstDay + d)
    let count = 0
    let rootSum = 0
    let dryCount = 0
    for (let g = 0; g < n; g++) {
      if (history.spanDays[d * n + g] !== 1) continue
      const amountMm = history.amountMm[d * n + g]!
      count++
      rootSum += Math.sqrt(amountMm)
      if (amountMm <= resolutionMm[g]! / 2) dryCount++
    }
    if (count < 2) continue
    sums.networkDays[month]! += 1
    sums.networkDry[month]! += dryCount / count
    for (let g = 0; g < n; g++) {
      if (history.spanDays[d * n + g] !== 1) continue
      const amountMm = history.amountMm[d * n + g]!
      const i = g * 12 + month
      sums.days[i]! += 1
      sums.root[i]! += Math.sqrt(amountMm)
      sums.rootOfNetwork[i]! += rootSum / count
      sums.dryOfNetwork[i]! += dryCount / count
      if (amountMm <= resolutionMm[g]! / 2) sums.dry[i]! += 1
      else {
        sums.wet[i]! += 1
        sums.logWet[month]! += Math.log(amountMm)
      }
    }
  }
  return sums
}
