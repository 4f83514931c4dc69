/** Learn the correlation of reports from pairs of gauges with common history; broad defaults where there is little. */
import type { Climate } from '../climate/climate.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { uncensorCorrelation } from './censoredCorrelation.ts'
import { censoredScores } from './censoredScores.ts'
import { type Correlation, correlationByShift, correlationOf, noPairs, type PairCorrelations } from './correlation.ts'
import { type GaugePair, nearPairs } from './nearPairs.ts'

/** Days of history used at most, latest first: habits change, and more adds little. */
const daysUsed = 3650
const enoughDays = 60
const maxLag = 2

/** Usual for daily rain: fronts 100-150 km, showers 20-50 km (common practice). */
export function usualCorrelation(gaugeCount: number): Correlation {
  return {
    shortShare: 0.3,
    shortRangeM: 25_000,
    longShare: 0.45,
    longRangeM: 150_000,
    plateau: 0.15,
    persistence: 0.1,
    fit: new Float64Array(gaugeCount).fill(1),
    offsetDays: new Float64Array(gaugeCount),
    pairs: noPairs(),
  }
}

/** Common days at which a pair's own history counts as much as the formula. */
const pairShrinkDays = 350
const mostPairCorrelation = 0.985

function blendPairs(gauges: GaugeSet, correlation: Correlation, pairs: PairSeen[]): PairCorrelations {
  const lags = 2 * maxLag + 1
  const out: PairCorrelations = {
    i: new Int32Array(pairs.length),
    j: new Int32Array(pairs.length),
    byLag: new Float32Array(pairs.length * lags).fill(Number.NaN),
  }
  pairs.forEach((pair, p) => {
    out.i[p] = pair.i
    out.j[p] = pair.j
    const own = pair.days / (pair.days + pairShrinkDays)
    for (let lag = -maxLag; lag <= maxLag; lag++) {
      const seen = pair.byLag[lag + maxLag]!
      if (Number.isNaN(seen)) continue
      const formula = correlationOf(correlation, gauges, pair.i, pair.j, lag)
      out.byLag[p * lags + lag + maxLag] = Math.min(mostPairCorrelation, own * seen + (1 - own) * formula)
    }
  })
  return out
}

export interface PairSeen extends GaugePair {
  days: number
  /** Full correlation with the second gauge's report 2 days earlier … 2 days later; index lag + 2. */
  byLag: Float64Array
}

export function learnCorrelation(gauges: GaugeSet, climate: Climate, history: DailyTable): Correlation {
  const n = gauges.ids.length
  const correlation = usualCorrelation(n)
  if (history.dayCount < enoughDays || n < 3) return correlation
  const scores = censoredScores(climate, history, daysUsed)
  const pairs = seePairs(nearPairs(gauges, n <= 150 ? n : 30), scores.value, scores.meanThreshold, n, scores.dayCount)
  if (pairs.length < 3) return correlation
  learnOffsets(correlation, pairs, n)
  learnPersistence(correlation, pairs)
  learnDistance(correlation, pairs)
  learnFit(correlation, pairs, n)
  correlation.pairs = blendPairs(gauges, correlation, pairs)
  return correlation
}

export function seePairs(
  pairs: GaugePair[],
  score: Float32Array,
  meanThreshold: Float64Array,
  n: number,
  dayCount: number,
): PairSeen[] {
  const seen: PairSeen[] = []
  for (const pair of pairs) {
    const { i, j } = pair
    const byLag = new Float64Array(2 * maxLag + 1)
    let days = 0
    for (let lag = -maxLag; lag <= maxLag; lag++) {
      let xy = 0
      let xx = 0
      let yy = 0
      let count = 0
      for (let d = Math.max(0, -lag); d < Math.min(dayCount, dayCount - lag); d++) {
        const x = score[d * n + i]!
        const y = score[(d + lag) * n + j]!
        const product = x * y
        if (Number.isNaN(product)) continue
        xy += product
        xx += x * x
        yy += y * y
        count++
      }
      if (lag === 0) days = count
      byLag[lag + maxLag] =
        count < enoughDays
          ? Number.NaN
          : uncensorCorrelation(xy / Math.sqrt(xx * yy), (meanThreshold[i]! + meanThreshold[j]!) / 2)
    }
    if (days >= enoughDays) seen.push({ ...pair, days, byLag })
  }
  return seen
}

/** A gauge whose reports go with its neighbours' next (or previous) day: by how much of a day, from the lags around 0. */
function learnOffsets(correlation: Correlation, pairs: PairSeen[], n: number): void {
  const offset = correlation.offsetDays
  for (let round = 0; round < 3; round++) {
    const sums = new Float64Array(n * 3)
    const weights = new Float64Array(n)
    for (const pair of pairs) {
      const weight =
        Math.max(0, Math.max(pair.byLag[1]!, pair.byLag[2]!, pair.byLag[3]!)) ** 4 * Math.min(1, pair.days / 300)
      if (!(weight > 0.01)) continue
      for (const [own, other, sign] of [
        [pair.i, pair.j, 1],
        [pair.j, pair.i, -1],
      ] as const) {
        // A neighbour's own offset moves the lag at which it should agree.
        const moved = Math.round(-offset[other]!)
        let usable = true
        for (let k = -1; k <= 1; k++) {
          const lag = sign * (k + moved) + maxLag
          if (!(lag >= 0 && lag <= 2 * maxLag) || Number.isNaN(pair.byLag[lag]!)) usable = false
        }
        if (!usable || Math.abs(offset[other]! + moved) > 0.3) continue
        for (let k = -1; k <= 1; k++) sums[own * 3 + k + 1]! += weight * pair.byLag[sign * (k + moved) + maxLag]!
        weights[own]! += weight
      }
    }
    for (let g = 0; g < n; g++) {
      if (weights[g]! <= 0) continue
      const before = sums[g * 3]! / weights[g]!
      const same = sums[g * 3 + 1]! / weights[g]!
      const after = sums[g * 3 + 2]! / weights[g]!
      const floor = Math.min(before, after)
      const reach = Math.max(before, after) - floor
      const share = reach / Math.max(0.05, reach + Math.max(0, same - floor))
      const signed = after > before ? share : -share
      const confident = weights[g]! / (weights[g]! + 0.1)
      offset[g] = Math.round(signed * confident * 8) / 8
      if (Math.abs(offset[g]!) < 0.2) offset[g] = 0
    }
    const middle = median(Float64Array.from(offset))
    for (let g = 0; g < n; g++) offset[g]! -= middle
  }
}

function median(values: Float64Array): number {
  values.sort()
  return values[values.length >> 1]!
}

function learnPersistence(correlation: Correlation, pairs: PairSeen[]): void {
  let lagged = 0
  let same = 0
  for (const pair of pairs) {
    if (correlation.offsetDays[pair.i] !== 0 || correlation.offsetDays[pair.j] !== 0) continue
    const a = pair.byLag[1]!
    const b = pair.byLag[3]!
    if (Number.isNaN(a) || Number.isNaN(b) || !(pair.byLag[2]! > 0.3)) continue
    lagged += pair.days * Math.min(a, b)
    same += pair.days * pair.byLag[2]!
  }
  if (same > 0) correlation.persistence = Math.min(0.3, Math.max(0.02, lagged / same))
}

/** Weighted least squares of same-day correlations on two exponentials and a plateau, all non-negative, on a grid of ranges. */
function learnDistance(correlation: Correlation, pairs: PairSeen[]): void {
  const rows: { distanceM: number; value: number; weight: number }[] = []
  for (const pair of pairs) {
    const shift = correlation.offsetDays[pair.i]! - correlation.offsetDays[pair.j]!
    if (Math.abs(shift) > 0.26) continue
    const value = pair.byLag[2]! / correlationByShift(correlation, shift)
    rows.push({ distanceM: pair.distanceM, value, weight: Math.min(1, pair.days / 400) / (0.1 + (1 - value) ** 2) })
  }
  if (rows.length < 6) return
  let best = Number.POSITIVE_INFINITY
  for (const shortRangeM of [6_000, 10_000, 16_000, 25_000, 40_000, 60_000]) {
    for (const longRangeM of [80_000, 120_000, 180_000, 280_000, 450_000, 700_000]) {
      const fit = fitNonNegative(rows, shortRangeM, longRangeM)
      if (fit.loss >= best) continue
      best = fit.loss
      const total = fit.a + fit.b + fit.c
      const shrink = total > 0.985 ? 0.985 / total : 1
      correlation.shortRangeM = shortRangeM
      correlation.longRangeM = longRangeM
      correlation.shortShare = fit.a * shrink
      correlation.longShare = fit.b * shrink
      correlation.plateau = fit.c * shrink
    }
  }
}

function fitNonNegative(
  rows: { distanceM: number; value: number; weight: number }[],
  shortRangeM: number,
  longRangeM: number,
): { a: number; b: number; c: number; loss: number } {
  const m = new Float64Array(9)
  const r = new Float64Array(3)
  let yy = 0
  for (const row of rows) {
    const x = [Math.exp(-row.distanceM / shortRangeM), Math.exp(-row.distanceM / longRangeM), 1]
    for (let p = 0; p < 3; p++) {
      r[p]! += row.weight * x[p]! * row.value
      for (let q = 0; q < 3; q++) m[p * 3 + q]! += row.weight * x[p]! * x[q]!
    }
    yy += row.weight * row.value * row.value
  }
  const beta = [0.3, 0.3, 0.1]
  for (let sweep = 0; sweep < 400; sweep++) {
    for (let p = 0; p < 3; p++) {
      let rest = r[p]!
      for (let q = 0; q < 3; q++) if (q !== p) rest -= m[p * 3 + q]! * beta[q]!
      beta[p] = Math.max(0, rest / m[p * 3 + p]!)
    }
  }
  let loss = yy
  for (let p = 0; p < 3; p++) {
    loss -= 2 * beta[p]! * r[p]!
    for (let q = 0; q < 3; q++) loss += beta[p]! * beta[q]! * m[p * 3 + q]!
  }
  return { a: beta[0]!, b: beta[1]!, c: beta[2]!, loss }
}

/** How much better or worse each gauge goes with all others than distance says: alternating mean of log ratios. */
function learnFit(correlation: Correlation, pairs: PairSeen[], n: number): void {
  const log = new Float64Array(n)
  const top = correlation.shortShare + correlation.longShare + correlation.plateau
  for (let round = 0; round < 6; round++) {
    const sums = new Float64Array(n)
    const weights = new Float64Array(n).fill(0.7)
    for (const { i, j, distanceM, days, byLag } of pairs) {
      const shift = correlation.offsetDays[i]! - correlation.offsetDays[j]!
      const model =
        (correlation.shortShare * Math.exp(-distanceM / correlation.shortRangeM) +
          correlation.longShare * Math.exp(-distanceM / correlation.longRangeM) +
          correlation.plateau) *
        correlationByShift(correlation, shift)
      const seen = byLag[2]!
      if (!(seen > 0.05) || model < 0.15) continue
      const weight = Math.min(1, days / 300) * model ** 4
      const ratio = Math.log(seen / model)
      sums[i]! += weight * (ratio - log[j]!)
      sums[j]! += weight * (ratio - log[i]!)
      weights[i]! += weight
      weights[j]! += weight
    }
    for (let g = 0; g < n; g++) log[g] = 0.5 * log[g]! + 0.5 * (sums[g]! / weights[g]!)
  }
  const most = Math.sqrt(0.995 / top)
  for (let g = 0; g < n; g++) correlation.fit[g] = Math.min(most, Math.max(0.4, Math.exp(log[g]!)))
}
