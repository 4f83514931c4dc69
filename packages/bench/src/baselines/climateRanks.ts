/** Where each amount stands among the wet amounts of its own gauge and season. */
import type { DailyTable } from '@gaugewright/science'

const halfWindowDays = 14
const enoughValues = 20

/**
 * Percentile rank (0 to 100) of each amount among the non-zero amounts of the same gauge within 14 days of the same
 * day of the year, all years; 0 for a dry day. Rank = (count below + half of the ties) / count. NaN where there is no
 * reading or not more than 20 such amounts. Source of window and count: [Durre2010].
 */
export function climateRanks(table: DailyTable, history: DailyTable | null): Float64Array {
  const n = table.gaugeCount
  const ranks = new Float64Array(table.amountMm.length).fill(Number.NaN)
  const dayOfYear = Int32Array.from({ length: table.dayCount }, (_, row) => dayOfYearOf(table.firstDay + row))
  for (let gauge = 0; gauge < n; gauge++) {
    const byDay: number[][] = Array.from({ length: 366 }, () => [])
    for (const part of history === null ? [table] : [history, table]) {
      for (let row = 0; row < part.dayCount; row++) {
        const amountMm = part.amountMm[row * n + gauge]!
        if (amountMm > 0) byDay[dayOfYearOf(part.firstDay + row)]!.push(amountMm)
      }
    }
    const windows: (Float64Array | undefined)[] = new Array(366)
    for (let row = 0; row < table.dayCount; row++) {
      const cell = row * n + gauge
      const amountMm = table.amountMm[cell]!
      if (Number.isNaN(amountMm)) continue
      const centre = dayOfYear[row]!
      let sorted = windows[centre]
      if (sorted === undefined) {
        const values: number[] = []
        for (let shift = -halfWindowDays; shift <= halfWindowDays; shift++)
          values.push(...byDay[(centre + shift + 366) % 366]!)
        sorted = Float64Array.from(values).sort()
        windows[centre] = sorted
      }
      if (sorted.length <= enoughValues) continue
      ranks[cell] =
        amountMm === 0 ? 0 : (50 * (countBelow(sorted, amountMm) + countUpTo(sorted, amountMm))) / sorted.length
    }
  }
  return ranks
}

/** Values of a sorted array below the limit. */
function countBelow(sorted: Float64Array, limit: number): number {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (sorted[middle]! < limit) low = middle + 1
    else high = middle
  }
  return low
}

function countUpTo(sorted: Float64Array, limit: number): number {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (sorted[middle]! <= limit) low = middle + 1
    else high = middle
  }
  return low
}

/** 0 to 365. */
function dayOfYearOf(day: number): number {
  const date = new Date(day * 86_400_000)
  return day - Date.UTC(date.getUTCFullYear(), 0, 1) / 86_400_000
}
