/**
 * Learn each gauge's climate from whatever history there is. A gauge's scale and chance of a dry day come from ratios
 * to the network on the same days, so that short and long records compare; they are shrunk toward the neighbours and
 * these toward the network where the record is short. With no history at all a broad pooled climate stands in.
 */
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { type Climate, wetGrid } from './climate.ts'
import { type ClimatePrior, temperateClimate } from './climatePrior.ts'
import { type MonthlySums, sumByGaugeAndMonth } from './monthlySums.ts'
import { weightOfMonth } from './monthWeight.ts'
import { findResolutionMm } from './resolution.ts'
import { learnRounding } from './rounding.ts'
import { shrunkDryOdds, shrunkRatios } from './shrunkRatios.ts'
import { fillWetScores } from './wetScores.ts'

export function learnClimate(gauges: GaugeSet, history: DailyTable, prior: ClimatePrior = temperateClimate): Climate {
  const n = gauges.ids.length
  const resolutionMm = findResolutionMm(history)
  const seen = sumByGaugeAndMonth(history, resolutionMm, n)
  const rootRatio = shrunkRatios(gauges, seen.root, seen.rootOfNetwork, seen.wet)
  const dryOdds = shrunkDryOdds(gauges, seen.dry, seen.dryOfNetwork, seen.days)
  const network = networkByMonth(seen, prior)
  const climate: Climate = {
    gaugeCount: n,
    resolutionMm,
    rounding: learnRounding(history),
    dryShare: new Float64Array(n * 12),
    scaleMm: new Float64Array(n * 12),
    wetScore: new Float64Array(12 * wetGrid.count),
  }
  for (let g = 0; g < n; g++) {
    for (let m = 0; m < 12; m++) {
      const odds = (network.dryShare[m]! / (1 - network.dryShare[m]!)) * dryOdds[g * 12 + m]!
      climate.dryShare[g * 12 + m] = Math.min(0.995, Math.max(0.02, odds / (1 + odds)))
      climate.scaleMm[g * 12 + m] = network.typicalMm[m]! * rootRatio[g * 12 + m]! ** 2
    }
  }
  fillWetScores(climate, history, prior)
  return climate
}

function networkByMonth(seen: MonthlySums, prior: ClimatePrior): { dryShare: Float64Array; typicalMm: Float64Array } {
  const dryShare = new Float64Array(12)
  const typicalMm = new Float64Array(12)
  const wetByMonth = new Float64Array(12)
  for (let i = 0; i < seen.wet.length; i++) wetByMonth[i % 12]! += seen.wet[i]!
  for (let m = 0; m < 12; m++) {
    let days = prior.days
    let dry = prior.days * prior.dryShare
    let wet = prior.days
    let log = prior.days * Math.log(prior.wetMm)
    for (let k = 0; k < 12; k++) {
      const share = weightOfMonth(m, k)
      days += share * seen.networkDays[k]!
      dry += share * seen.networkDry[k]!
      wet += share * wetByMonth[k]!
      log += share * seen.logWet[k]!
    }
    dryShare[m] = dry / days
    typicalMm[m] = Math.exp(log / wet)
  }
  return { dryShare, typicalMm }
}
