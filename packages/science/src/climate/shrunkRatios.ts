/** How each gauge differs from the network on the same days, shrunk toward its neighbours and these toward the network. */
import type { GaugeSet } from '../network/gaugeSet.ts'
import { nearestGauges } from '../space/nearestGauges.ts'
import { weightOfMonth } from './monthWeight.ts'

/** Wet days at which a gauge's own ratio counts as much as what it is shrunk toward: chosen by CRPS on training halves. */
const shrinkYear = 200
const shrinkMonth = 800
const neighbourRangeM = 40_000
const neighboursUsed = 40

/** Ratio of mean root amounts to the network's on the same days: by year shrunk toward neighbours, by month toward the year. */
export function shrunkRatios(
  gauges: GaugeSet,
  own: Float64Array,
  network: Float64Array,
  wet: Float64Array,
): Float64Array {
  const n = gauges.ids.length
  const logYear = new Float64Array(n)
  const weight = yearSums(wet)
  const ownYear = yearSums(own)
  const networkYear = yearSums(network)
  for (let g = 0; g < n; g++) logYear[g] = weight[g]! > 0 ? Math.log((ownYear[g]! + 1) / (networkYear[g]! + 1)) : 0
  const year = shrinkTowardNeighbours(gauges, logYear, weight, shrinkYear)
  const ratio = new Float64Array(n * 12)
  for (let g = 0; g < n; g++) {
    for (let m = 0; m < 12; m++) {
      let a = 0
      let b = 0
      let w = 0
      for (let k = 0; k < 12; k++) {
        const share = weightOfMonth(m, k)
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
export function shrunkDryOdds(
  gauges: GaugeSet,
  dry: Float64Array,
  network: Float64Array,
  days: Float64Array,
): Float64Array {
  const n = gauges.ids.length
  const logYear = new Float64Array(n)
  const weight = yearSums(days)
  const dryYear = yearSums(dry)
  const networkYear = yearSums(network)
  for (let g = 0; g < n; g++) {
    const share = (dryYear[g]! + 2) / (weight[g]! + 4)
    const expected = (networkYear[g]! + 2) / (weight[g]! + 4)
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

/** Sums over the twelve months of each gauge. */
function yearSums(byMonth: Float64Array): Float64Array {
  const sums = new Float64Array(byMonth.length / 12)
  for (let i = 0; i < byMonth.length; i++) sums[Math.floor(i / 12)]! += byMonth[i]!
  return sums
}
