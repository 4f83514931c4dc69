import type { LatentTable } from '../expectation/latentTable.ts'
import { predictiveAt } from '../expectation/predictive.ts'
import { gaugeRate } from './explainReport.ts'
import type { GaugeDays } from './sequence.ts'
import { sharesOf } from './sharesOf.ts'
import { stepsOf } from './sources.ts'

/** One gauge's column of a latent table, as the sequence of its days needs it. */
export function gaugeDaysOf(latent: LatentTable, single: Float64Array, gauge: number): GaugeDays {
  const { table, model } = latent
  const n = table.gaugeCount
  const { climate } = model
  const resolutionMm = climate.resolutionMm[gauge]!
  const writtenMm = Math.min(climate.writtenMm, resolutionMm)
  const offStepChance = climate.offStepChance[gauge]!
  return {
    rows: table.dayCount,
    amountMm: (row) => (table.spanDays[row * n + gauge] === 1 ? table.amountMm[row * n + gauge]! : Number.NaN),
    isFree: (row) => table.spanDays[row * n + gauge]! <= 1 && table.settled[row * n + gauge] !== 1,
    predictive: (row) => predictiveAt(latent, row, gauge),
    resolutionMm,
    asRead: (row) => {
      const amountMm = table.amountMm[row * n + gauge]!
      return amountMm > resolutionMm / 2 ? stepsOf({ amountMm, resolutionMm, writtenMm, offStepChance }).asRead : 1
    },
    singleWeight: (row) => single[row * n + gauge]!,
    rate: gaugeRate(model, gauge),
    shares: sharesOf(model),
  }
}
