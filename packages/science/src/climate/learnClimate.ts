/**
 * Learn each gauge's climate from whatever history there is. A gauge's scale and chance of a dry day come from ratios
 * to the network on the same days, so that short and long records compare; they are shrunk toward the neighbours and
 * these toward the network where the record is short. With no history at all a broad pooled climate stands in.
 */
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { nearestGauges } from '../space/nearestGauges.ts'
import { normalQuantile } from '../stats/normalQuantile.ts'
import { type Climate, monthOfEpochDay, wetGrid } from './climate.ts'
import { findResolutionMm, findSteps } from './resolution.ts'

export interface ClimatePrior {
  /** Weight of the standing prior, in days. */
  days: number
  dryShare: number
  /** Typical (geometric mean) wet amount, mm, and the spread of its logarithm. */
  wetMm: number
  wetLogSd: number
}

/** Broad values for a temperate day; common practice, soon outweighed by history. */
export const temperateClimate: ClimatePrior = { days: 20, dryShare: 0.62, wetMm: 3.2, wetLogSd: 1.45 }

/** How far a month's readings count for the months around it, by distance in months (0 to 6). */
const monthWeight = [1, 0.6, 0.2, 0.05, 0.02, 0.01, 0.01]

/** Wet days at which a gauge's own ratio counts as much as what it is shrunk toward: chosen by CRPS on training halves. */
const shrinkYear = 200
const shrinkMonth = 800
const neighbourRangeM = 40_000
const neighboursUsed = 40
/** d(score)/d(ln amount) over the score: half the Weibull shape. */
const tailSteepness = 0.35

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
    ...findSteps(history, resolutionMm),
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

interface Sums {
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

function sumByGaugeAndMonth(history: DailyTable, resolutionMm: Float64Array, n: number): Sums {
  const cells = n * 12
  const sums: Sums = {
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

function distanceInMonths(a: number, b: number): number {
  const apart = Math.abs(a - b)
  return Math.min(apart, 12 - apart)
}

/** Ratio of mean root amounts to the network's on the same days: by year shrunk toward neighbours, by month toward the year. */
function shrunkRatios(gauges: GaugeSet, own: Float64Array, network: Float64Array, wet: Float64Array): Float64Array {
  const n = gauges.ids.length
  const logYear = new Float64Array(n)
  const weight = new Float64Array(n)
  for (let g = 0; g < n; g++) {
    let a = 0
    let b = 0
    for (let m = 0; m < 12; m++) {
      a += own[g * 12 + m]!
      b += network[g * 12 + m]!
      weight[g]! += wet[g * 12 + m]!
    }
    logYear[g] = weight[g]! > 0 ? Math.log((a + 1) / (b + 1)) : 0
  }
  const year = shrinkTowardNeighbours(gauges, logYear, weight, shrinkYear)
  const ratio = new Float64Array(n * 12)
  for (let g = 0; g < n; g++) {
    for (let m = 0; m < 12; m++) {
      let a = 0
      let b = 0
      let w = 0
      for (let k = 0; k < 12; k++) {
        const share = monthWeight[distanceInMonths(m, k)]!
        a += share * own[g * 12 + k]!
        b += share * network[g * 12 + k]!
        w += share * wet[g * 12 + k]!
      }
      const month = w > 0 ? Math.log((a + 0.5) / (b + 0.5)) : 0
      const log = (w * month + shrinkMonth * year[g]!) / (w + shrinkMonth)
      ratio[g * 12 + m] = Math.exp(Math.min(1.2, Math.max(-1.2, log)))
    }
  }
  return ratio
}

/** Odds ratio of a dry day against the network on the same days, shrunk in the same way. */
function shrunkDryOdds(gauges: GaugeSet, dry: Float64Array, network: Float64Array, days: Float64Array): Float64Array {
  const n = gauges.ids.length
  const logYear = new Float64Array(n)
  const weight = new Float64Array(n)
  for (let g = 0; g < n; g++) {
    let a = 0
    let b = 0
    for (let m = 0; m < 12; m++) {
      a += dry[g * 12 + m]!
      b += network[g * 12 + m]!
      weight[g]! += days[g * 12 + m]!
    }
    const share = (a + 2) / (weight[g]! + 4)
    const expected = (b + 2) / (weight[g]! + 4)
    logYear[g] = Math.log((share / (1 - share)) * ((1 - expected) / expected))
  }
  const year = shrinkTowardNeighbours(gauges, logYear, weight, shrinkYear * 3)
  const odds = new Float64Array(n * 12)
  for (let g = 0; g < n; g++) for (let m = 0; m < 12; m++) odds[g * 12 + m] = Math.exp(year[g]!)
  return odds
}

function shrinkTowardNeighbours(
  gauges: GaugeSet,
  value: Float64Array,
  weight: Float64Array,
  shrink: number,
): Float64Array {
  const n = value.length
  const out = new Float64Array(n)
  const near = nearestGauges(gauges, Math.min(n - 1, neighboursUsed))
  for (let g = 0; g < n; g++) {
    let sum = 0
    let total = shrink // the network's own value, 0, carries one shrink unit
    for (const j of near[g]!) {
      const dx = gauges.xM[g]! - gauges.xM[j]!
      const dy = gauges.yM[g]! - gauges.yM[j]!
      const squared = (dx * dx + dy * dy) / (neighbourRangeM * neighbourRangeM)
      if (squared > 9) break
      const w = weight[j]! * Math.exp(-squared / 2)
      sum += w * value[j]!
      total += w
    }
    const around = sum / total
    out[g] = (weight[g]! * value[g]! + shrink * around) / (weight[g]! + shrink)
  }
  return out
}

function networkByMonth(seen: Sums, prior: ClimatePrior): { dryShare: Float64Array; typicalMm: Float64Array } {
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
      const share = monthWeight[distanceInMonths(m, k)]!
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

/** Pooled distribution of wet amounts over their scale, by month: smoothed shares as normal scores on the even grid. */
function fillWetScores(climate: Climate, history: DailyTable, prior: ClimatePrior): void {
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
      const share = monthWeight[distanceInMonths(m, month)]!
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
