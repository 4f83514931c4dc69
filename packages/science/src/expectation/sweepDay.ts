/**
 * One sweep of expectation propagation over the reports of a day: each gauge's cavity by simple kriging of its
 * neighbours' sites, then its own site by matching moments with its report: a mixture of "as reported" (the score lies
 * in its cell) and "says nothing". Source: [Minka2001]; local neighbourhoods as in [Vecchia1988].
 */
import { smallSystem } from '../krige/smallSystem.ts'
import { mostInSystem, systemStride } from '../krige/systemRoom.ts'
import { normalCdf } from '../stats/normalCdf.ts'
import type { LatentTable } from './latentTable.ts'
import type { Neighbourhood } from './neighbourhood.ts'

export interface SweepAsk {
  /** Neighbouring reports used at most. */
  most: number
  /** Latest day (row) whose reports may be used. */
  latestRow: number
  /** Part of the new site that is taken (0 to 1). */
  damping: number
}

/** On the diagonal, against rounding. */
const unit = 1.0001
const least = 1e-9
/** Weight of the usual spread against what the surroundings of a gauge show. */
const usualSpread = 2.5
/** The candidates whose reports are there, and what they say. */
const chosen = new Int32Array(mostInSystem)
const siteMean = new Float64Array(mostInSystem)

export function sweepDay(latent: LatentTable, hood: Neighbourhood, row: number, ask: SweepAsk): void {
  const n = latent.table.gaugeCount
  for (let g = 0; g < n; g++) {
    computeCavity(latent, hood, row, g, ask)
    updateSite(latent, row * n + g, ask.damping)
  }
}

/** What the neighbours say of gauge g on a row; also the spread around it. */
export function computeCavity(latent: LatentTable, hood: Neighbourhood, row: number, g: number, ask: SweepAsk): void {
  const { table, sitePrecision, siteShift } = latent
  const n = table.gaugeCount
  const size = hood.size
  const base = g * size
  let k = 0
  let spreadSum = 0
  let spreadWeight = 0
  const i = row * n + g
  const most = Math.min(ask.most, mostInSystem)
  const { room, solve } = smallSystem()
  for (let c = 0; c < size && k < most; c++) {
    const j = hood.gauge[base + c]!
    if (j < 0) break
    const day = row + hood.lagDays[base + c]!
    if (day < 0 || day > ask.latestRow || day >= table.dayCount) continue
    const other = day * n + j
    const precision = sitePrecision[other]!
    if (precision <= least) continue
    chosen[k] = c
    siteMean[k] = siteShift[other]! / precision
    room[k * systemStride + k] = unit + 1 / precision
    const withGauge = hood.withGauge[base + c]!
    const w = withGauge * withGauge * latent.surpriseWeight[other]!
    spreadSum += w * latent.surprise[other]!
    spreadWeight += w
    k++
  }
  latent.used[i] = k
  latent.spread[i] = spreadWeight < 1e-9 ? 1 : (usualSpread + spreadSum) / (usualSpread + spreadWeight)
  fillRoom(room, hood, base, k)
  solve(k)
  let mean = 0
  let explained = 0
  for (let a = 0; a < k; a++) {
    const side = a * systemStride + k
    const right = room[side]!
    mean += right * room[side + 1]!
    explained += right * right
  }
  latent.cavityMean[i] = mean
  latent.cavityVariance[i] = Math.max(0.005, 1 - explained)
}

/**
 * Correlations of the chosen candidates with one another, two rows by two columns at a time, for each is fetched from
 * memory; their correlations with the gauge, and what they say.
 */
function fillRoom(room: Float64Array, hood: Neighbourhood, base: number, count: number): void {
  const { among, withGauge, size } = hood
  for (let a = 0; a < count; a++) {
    const side = a * systemStride + count
    room[side] = withGauge[base + chosen[a]!]!
    room[side + 1] = siteMean[a]!
  }
  for (let a = 0; a + 1 < count; a += 2) {
    const row = a * systemStride
    const below = row + systemStride
    const from = (base + chosen[a]!) * size
    const fromBelow = (base + chosen[a + 1]!) * size
    room[row + a + 1] = among[from + chosen[a + 1]!]!
    let b = a + 2
    for (; b + 1 < count; b += 2) {
      const first = chosen[b]!
      const second = chosen[b + 1]!
      room[row + b] = among[from + first]!
      room[row + b + 1] = among[from + second]!
      room[below + b] = among[fromBelow + first]!
      room[below + b + 1] = among[fromBelow + second]!
    }
    if (b < count) {
      room[row + b] = among[from + chosen[b]!]!
      room[below + b] = among[fromBelow + chosen[b]!]!
    }
  }
}

const rootTwoPi = 0.3989422804014327

/** Match the moments of cavity × report; write the site as what remains when the cavity is divided out. */
export function updateSite(latent: LatentTable, i: number, damping: number): void {
  const low = latent.low[i]!
  if (Number.isNaN(low)) return
  const high = latent.high[i]!
  const mean = latent.cavityMean[i]!
  const variance = latent.cavityVariance[i]!
  const sd = Math.sqrt(variance)
  const stands = latent.stands[i]!
  let cellMean: number
  let cellVariance: number
  let told: number
  if (low === Number.NEGATIVE_INFINITY) {
    const beta = (high - mean) / sd
    const share = normalCdf(beta)
    const density = rootTwoPi * Math.exp(-0.5 * beta * beta)
    // Far above the threshold the truncated normal hugs it: asymptotic ratio.
    const ratio = share > 1e-12 ? density / share : -beta + 1 / -beta
    cellMean = mean - sd * ratio
    cellVariance = variance * Math.max(0.01, 1 - beta * ratio - ratio * ratio)
    told = 1 - share
  } else {
    const width = high - low
    cellMean = mean < low ? low + 0.5 * width : mean > high ? high - 0.5 * width : 0.5 * (low + high)
    cellVariance = (width * width) / 12 + 1e-4
    told = 1
  }
  const apart = cellMean - mean
  latent.surprise[i] = Math.min(25, (apart * apart + cellVariance) / variance)
  latent.surpriseWeight[i] = told * stands
  const tiltedMean = stands * cellMean + (1 - stands) * mean
  const offCell = cellMean - tiltedMean
  const offCavity = mean - tiltedMean
  const tiltedVariance = stands * (cellVariance + offCell * offCell) + (1 - stands) * (variance + offCavity * offCavity)
  let precision = 1 / tiltedVariance - 1 / variance
  let shift = tiltedMean / tiltedVariance - mean / variance
  if (precision < 1e-6) {
    precision = 1e-6
    shift = tiltedMean * 1e-6
  }
  latent.sitePrecision[i] = (1 - damping) * latent.sitePrecision[i]! + damping * precision
  latent.siteShift[i] = (1 - damping) * latent.siteShift[i]! + damping * shift
}
