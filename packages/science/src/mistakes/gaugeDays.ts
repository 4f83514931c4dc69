import type { LatentTable } from '../expectation/latentTable.ts'
import { predictiveAt } from '../expectation/predictive.ts'
import { gaugeRate } from './explainReport.ts'
import type { GaugeDays } from './sequence.ts'

/** One gauge's column of a latent table, as the sequence of its days needs it. */
export function gaugeDaysOf(latent: LatentTable, single: Float64Array, gauge: number): GaugeDays {
  const { table, model } = latent
  const n = table.gaugeCount
  return {
    rows: table.dayCount,
    amountMm: (row) => (table.spanDays[row * n + gauge] === 1 ? table.amountMm[row * n + gauge]! : Number.NaN),
    isFree: (row) => table.spanDays[row * n + gauge]! <= 1 && table.settled[row * n + gauge] !== 1,
    predictive: (row) => predictiveAt(latent, row, gauge),
    resolutionMm: model.climate.resolutionMm[gauge]!,
    singleWeight: (row) => single[row * n + gauge]!,
    rate: gaugeRate(model, gauge),
  }
}
