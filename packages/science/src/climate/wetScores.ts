/** The pooled distribution of wet amounts by month, as normal scores on an even grid of ln(amount / scale). */
import type { DailyTable } from '../network/dailyTable.ts'
import { normalQuantile } from '../stats/normalQuantile.ts'
import { type Climate, monthOfEpochDay, wetGrid } from './climate.ts'
import type { ClimatePrior } from './climatePrior.ts'
import { weightOfMonth } from './monthWeight.ts'

/** d(score)/d(ln amount) over the score: half the Weibull shape. */
const tailSteepness = 0.35

/** Pooled distribution of wet amounts over their scale, by month: smoothed shares as normal scores on the even grid. */
export function fillWetScores(climate: Climate, history: DailyTable, prior: ClimatePrior): void {
  const n = climate.gaugeCount
  const { from, step, count } = wetGrid
  const counts = new Float64Array(12 * count)
  for (let d = 0; d < history.dayCount; d++) {
    const month = monthOfEpochDay(history.firstDay + d)
    for (let g = 0; g < n; g++) {
      const i = d * n + g
      if (history.spanDays[i] !== 1) continue
      const amountMm = history.amountMm[i]!
      if (amountMm <= climate.resolutionMm[g]! / 2) continue
      const position = (Math.log(amountMm / climate.scaleMm[g * 12 + month]!) - from) / step
      const k = Math.min(count - 1, Math.max(0, Math.round(position)))
      counts[month * count + k]! += 1
    }
  }
  for (let m = 0; m < 12; m++) {
    const mass = new Float64Array(count)
    for (let month = 0; month < 12; month++) {
      const share = weightOfMonth(m, month)
      for (let k = 0; k < count; k++) mass[k]! += share * counts[month * count + k]!
    }
    for (let k = 0; k < count; k++) {
      const t = (from + step * k) / prior.wetLogSd
      mass[k]! += 3 * prior.days * (step / prior.wetLogSd) * Math.exp((-t * t) / 2) * 0.3989422804014327
    }
    toScores(mass, climate.wetScore.subarray(m * count, (m + 1) * count))
  }
}

/** Shares below the middle of each bin as scores; beyond the 0.2 % tails by the slope just inside them. */
function toScores(mass: Float64Array, out: Float64Array): void {
  const { step, count } = wetGrid
  let total = 0
  for (let k = 0; k < count; k++) total += mass[k]!
  const survival = new Float64Array(count)
  let above = 0
  for (let k = count - 1; k >= 0; k--) {
    survival[k] = (above + mass[k]! / 2) / total
    above += mass[k]!
  }
  const smooth = new Float64Array(count)
  for (let k = 0; k < count; k++) {
    const share = Math.min(1 - 1e-9, Math.max(1e-9, survival[k]!))
    smooth[k] = -normalQuantile(share)
  }
  let low = 0
  while (low < count - 8 && survival[low]! > 0.995) low++
  let high = count - 1
  while (high > low + 6 && survival[high]! < 0.0015) high--
  for (let k = 0; k < count; k++) {
    let sum = 0
    let weight = 0
    for (let j = Math.max(low, k - 2); j <= Math.min(high, k + 2); j++) {
      const w = 3 - Math.abs(j - k)
      sum += w * smooth[j]!
      weight += w
    }
    out[k] = weight > 0 ? sum / weight : 0
  }
  const reach = 6
  const lowSlope = Math.max(0.25, (out[low + 1 + reach]! - out[low + 1]!) / (reach * step))
  const highSlope = Math.max(0.35, (out[high - 1]! - out[high - 1 - reach]!) / (reach * step))
  for (let k = low; k >= 0; k--) out[k] = out[k + 1]! - lowSlope * step
  for (let k = high; k < count; k++) out[k] = out[k - 1]! + highSlope * step
  for (let k = 1; k < count; k++) {
    // In the upper tail at least as steep as a Weibull tail of shape 0.7 (exceedance exp(-x^0.7)): a lognormal
    // straight line there would give endless amounts.
    const least = out[k - 1]! > 1.5 ? tailSteepness * out[k - 1]! * step : 0.004
    if (out[k]! < out[k - 1]! + least) out[k] = out[k - 1]! + least
  }
}
