/**
 * How well a gauge's reports go with those of the gauges around, day against day: on its own date and on dates up to two
 * days off. A gauge that dates its rain a day late agrees best with what the others reported the day before.
 */
import type { Climate } from '../climate/climate.ts'
import { censoredScores } from '../expectation/censoredScores.ts'
import { pairLags } from '../expectation/correlation.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { nearestGauges } from '../space/nearestGauges.ts'

const lags = 2 * pairLags + 1
const neighbourCount = 8
/** Common days below which a neighbour says nothing. */
const enoughDays = 60
/** The record is cut into parts of about this many days, and each left out in turn, to see how far figures vary. */
const partDays = 45
const mostParts = 12

/** Mean correlation of a gauge with its neighbours at lags -2 … 2; index lag + 2. NaN where it cannot be told. */
export interface Agreement {
  byLag: Float64Array
  /** Same, each part of the record left out in turn; index part * 5 + lag + 2. */
  without: Float64Array
  parts: number
  /** Days of the gauge that took part. */
  days: number
}

/** @param offsetDays  how far each gauge's dates run ahead: a neighbour's own offset is taken out */
export function agreementsByLag(
  gauges: GaugeSet,
  table: DailyTable,
  climate: Climate,
  offsetDays: Float64Array,
  mostDays: number,
): Agreement[] {
  const n = gauges.ids.length
  const { value, dayCount } = censoredScores(climate, table, mostDays)
  const parts = Math.max(1, Math.min(mostParts, Math.floor(dayCount / partDays)))
  const near = nearestGauges(gauges, neighbourCount)
  // By gauge: a day's scores of two gauges are then read from two streams.
  const scores = new Float32Array(value.length)
  for (let d = 0; d < dayCount; d++) for (let g = 0; g < n; g++) scores[g * dayCount + d] = value[d * n + g]!
  return near.map((others, g) => agreementOf(g, others, scores, dayCount, parts, offsetDays))
}

function agreementOf(
  g: number,
  others: Int32Array,
  scores: Float32Array,
  dayCount: number,
  parts: number,
  offsetDays: Float64Array,
): Agreement {
  const byLag = new Float64Array(lags)
  const without = new Float64Array(parts * lags)
  const weights = new Float64Array(lags)
  const own = g * dayCount
  let days = 0
  for (let d = 0; d < dayCount; d++) if (!Number.isNaN(scores[own + d]!)) days++
  for (const other of others) {
    const moved = Math.round(-offsetDays[other]!)
    for (let k = 0; k < lags; k++) {
      const sums = sumProducts(scores, own, other * dayCount, dayCount, k - pairLags + moved, parts)
      const total = sums.total
      if (total[3]! < enoughDays) continue
      weights[k]! += 1
      byLag[k]! += correlation(total, 0, null, 0)
      for (let p = 0; p < parts; p++) without[p * lags + k]! += correlation(total, 0, sums.byPart, p * 4)
    }
  }
  for (let k = 0; k < lags; k++) {
    byLag[k] = weights[k]! > 0 ? byLag[k]! / weights[k]! : Number.NaN
    for (let p = 0; p < parts; p++)
      without[p * lags + k] = weights[k]! > 0 ? without[p * lags + k]! / weights[k]! : Number.NaN
  }
  return { byLag, without, parts, days }
}

/** Sums of xy, xx, yy and days, in all and by part of the record. Scores have mean 0 by construction. */
function sumProducts(scores: Float32Array, own: number, other: number, dayCount: number, lag: number, parts: number) {
  const byPart = new Float64Array(parts * 4)
  const total = new Float64Array(4)
  for (let d = Math.max(0, -lag); d < Math.min(dayCount, dayCount - lag); d++) {
    const x = scores[own + d]!
    const y = scores[other + d + lag]!
    const product = x * y
    if (Number.isNaN(product)) continue
    const at = Math.min(parts - 1, Math.floor((d * parts) / dayCount)) * 4
    byPart[at]! += product
    byPart[at + 1]! += x * x
    byPart[at + 2]! += y * y
    byPart[at + 3]! += 1
  }
  for (let k = 0; k < byPart.length; k++) total[k % 4]! += byPart[k]!
  return { total, byPart }
}

function correlation(sums: Float64Array, at: number, minus: Float64Array | null, minusAt: number): number {
  const part = (k: number): number => sums[at + k]! - (minus === null ? 0 : minus[minusAt + k]!)
  const power = part(1) * part(2)
  return power > 0 ? part(0) / Math.sqrt(power) : 0
}

/**
 * A figure drawn from the agreement, with its standard error by leaving out each part of the record in turn (jackknife).
 * @returns error NaN where the record has too few parts to tell
 */
export function withError(
  agreement: Agreement,
  figure: (byLag: Float64Array) => number,
): { value: number; error: number } {
  const value = figure(agreement.byLag)
  const { parts } = agreement
  if (parts < 3) return { value, error: Number.NaN }
  const left = Array.from({ length: parts }, (_, p) => figure(agreement.without.subarray(p * lags, (p + 1) * lags)))
  const mean = left.reduce((sum, each) => sum + each, 0) / parts
  const spread = left.reduce((sum, each) => sum + (each - mean) ** 2, 0)
  return { value, error: Math.sqrt(((parts - 1) / parts) * spread) }
}
