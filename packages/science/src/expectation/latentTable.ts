/**
 * The state of the latent field over a table of days: for every report its cell of normal scores, what its neighbours
 * say of it (the cavity: mean and variance without the report itself) and what it says to them (its site, a Gaussian
 * factor in natural parameters). Expectation propagation with local neighbourhoods; one sweep is in sweepDay.ts.
 */
import { monthOfEpochDay } from '../climate/climate.ts'
import { type ScoreScale, scoreOfAmount, scoreScale } from '../climate/scores.ts'
import type { Model } from '../model/model.ts'
import type { DailyTable } from '../network/dailyTable.ts'

export interface LatentTable {
  table: DailyTable
  model: Model
  /** Score scale of gauge g in month m; index g * 12 + m; only of months that the table has days in. */
  scales: ScoreScale[]
  monthOfDay: Uint8Array
  /** Score cell of each report; low is -Infinity for a dry one. NaN where there is no daily report. */
  low: Float64Array
  high: Float64Array
  /** Site precision and precision × mean; 0 where a report says nothing. */
  sitePrecision: Float64Array
  siteShift: Float64Array
  cavityMean: Float64Array
  cavityVariance: Float64Array
  /** Odds that the report stands, as the mixture weight of its site. */
  stands: Float64Array
  /** Neighbouring reports used for the cavity. */
  used: Uint8Array
  /** Spread of the surroundings against what the model expects (1 is usual). */
  spread: Float64Array
  /** Squared standardised residual (expected, within its cell) and how much it tells (0 to 1). */
  surprise: Float64Array
  surpriseWeight: Float64Array
}

export function openLatentTable(table: DailyTable, model: Model): LatentTable {
  const n = table.gaugeCount
  const cells = n * table.dayCount
  const scales: ScoreScale[] = new Array(n * 12)
  const monthOfDay = Uint8Array.from({ length: table.dayCount }, (_, d) => monthOfEpochDay(table.firstDay + d))
  for (const m of new Set(monthOfDay)) for (let g = 0; g < n; g++) scales[g * 12 + m] = scoreScale(model.climate, g, m)
  const latent: LatentTable = {
    table,
    model,
    scales,
    monthOfDay,
    low: new Float64Array(cells).fill(Number.NaN),
    high: new Float64Array(cells).fill(Number.NaN),
    sitePrecision: new Float64Array(cells),
    siteShift: new Float64Array(cells),
    cavityMean: new Float64Array(cells),
    cavityVariance: new Float64Array(cells).fill(1),
    stands: new Float64Array(cells).fill(1 - model.mistakeRate),
    used: new Uint8Array(cells),
    spread: new Float64Array(cells).fill(1),
    surprise: new Float64Array(cells),
    surpriseWeight: new Float64Array(cells),
  }
  for (let d = 0; d < table.dayCount; d++) openDay(latent, d)
  return latent
}

function openDay(latent: LatentTable, d: number): void {
  const { table, model } = latent
  const n = table.gaugeCount
  const month = latent.monthOfDay[d]!
  for (let g = 0; g < n; g++) {
    const i = d * n + g
    if (table.spanDays[i] !== 1) continue
    const scale = latent.scales[g * 12 + month]!
    const amountMm = table.amountMm[i]!
    const half = model.climate.resolutionMm[g]! / 2
    if (table.settled[i] === 1) latent.stands[i] = 0.9995
    if (amountMm <= half && table.isTrace[i] === 0) {
      latent.low[i] = Number.NEGATIVE_INFINITY
      latent.high[i] = scale.dryThreshold
      // A first guess of what a dry report says; the sweeps mend it.
      const precision = 1.2
      latent.sitePrecision[i] = precision
      latent.siteShift[i] = precision * (scale.dryThreshold - 0.9)
      continue
    }
    latent.low[i] = table.isTrace[i] === 1 ? scale.dryThreshold : scoreOfAmount(scale, amountMm - half)
    latent.high[i] = table.isTrace[i] === 1 ? scoreOfAmount(scale, 1.5 * half) : scoreOfAmount(scale, amountMm + half)
    if (latent.high[i]! <= latent.low[i]! + 1e-6) latent.high[i] = latent.low[i]! + 1e-3
    const width = Math.max(0.02, latent.high[i]! - latent.low[i]!)
    latent.sitePrecision[i] = 1 / ((width * width) / 12 + 0.02)
    latent.siteShift[i] = latent.sitePrecision[i]! * 0.5 * (latent.low[i]! + latent.high[i]!)
  }
}
