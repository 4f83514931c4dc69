/**
 * What is usual at one gauge, cut out of a network's model: small enough to be carried on a phone, so that an entry can
 * be checked without a signal. It holds nothing of the morning and nothing of any other gauge's readings.
 */
import { type Climate, wetGrid } from '../climate/climate.ts'
import { gaugeRate } from '../mistakes/explainReport.ts'
import type { Model } from '../model/model.ts'

export interface PocketClimate {
  /** Climate of one gauge. */
  climate: Climate
  /** Share of the gauge's reports that are wrong in some way. */
  mistakeRate: number
  /** Depth of the inner tube, mm. */
  tubeMm: number
}

const months = 12

/** @param gauge  index of the gauge in the model */
export function pocketClimate(model: Model, gauge: number): PocketClimate {
  const { climate } = model
  const own = gauge * months
  const steps = climate.rounding.stepsMm.length
  return {
    climate: {
      gaugeCount: 1,
      resolutionMm: climate.resolutionMm.slice(gauge, gauge + 1),
      rounding: { ...climate.rounding, share: climate.rounding.share.slice(gauge * steps, (gauge + 1) * steps) },
      dryShare: climate.dryShare.slice(own, own + months),
      scaleMm: climate.scaleMm.slice(own, own + months),
      wetScore: climate.wetScore.slice(0, months * wetGrid.count),
    },
    mistakeRate: gaugeRate(model, gauge),
    tubeMm: model.tubeMm,
  }
}
