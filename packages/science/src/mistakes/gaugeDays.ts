import type { LatentTable } from '../expectation/latentTable.ts'
import { predictiveAt } from '../expectation/predictive.ts'
import { gaugeRate } from './explainReport.ts'
import { readerOf } from './readMass.ts'
import type { GaugeDays } from './sequence.ts'

/** One gauge's column of a latent table, as the sequence of its days needs it. */
export function gaugeDaysOf(latent: LatentTable, single: Float64Array, gauge: number): GaugeDays {
  const { table, model } = latent
  const n = table.gaugeCount
  const { climate } = model
  const resolutionMm = climate.resolutionMm[gauge]!
  return {
    rows: table.dayCount,
    amountMm: (row) => (table.spanDays[row * n + gauge] === 1 ? table.amountMm[row * n + gauge]! : Number.NaN),
    isFree: (row) => table.spanDays[row * n + gauge]! <= 1 && table.settled[row * n + gauge] !== 1,
    predictive: (row) => predictiveAt(latent, row, gauge),
    resolutionMm,
    reader: readerOf(climate.rounding, gauge),
    singleWeight: (row) => single[row * n + gauge]!,
    rate: gaugeRate(model, gauge),
    shares: model.mistakeShare,
  }
}
