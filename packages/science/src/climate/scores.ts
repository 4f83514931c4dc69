/**
 * Amount to normal score and back, for one gauge and month: z = Φ⁻¹(F(amount)), F the mixed climate distribution. A dry
 * day is any score below the dry threshold; the smallest amount a gauge resolves starts just above it. Upper tails are
 * carried by survival shares, so that a rare amount keeps its digits.
 */
import { normalCdf } from '../stats/normalCdf.ts'
import { normalQuantile } from '../stats/normalQuantile.ts'
import { type Climate, wetGrid } from './climate.ts'

/** The constants of one gauge and month, ready for fast conversion. */
export interface ScoreScale {
  /** 0 to 11. */
  month: number
  /** Scores below are dry days. */
  dryThreshold: number
  /** Score of one millimetre: from here on a day is properly wet. */
  oneMmScore: number
  logScale: number
  /** (1 - dry share) / share of pooled wet amounts above the gauge's first cell. */
  wetFactor: number
  /** Amounts up to here (mm) are not resolved. */
  dryBelowMm: number
  /** Row of `climate.wetScore`. */
  tableStart: number
  table: Float64Array
}

const lastKnot = wetGrid.count - 1

/** Pooled wet score of ln(amount / scale); linear between knots and beyond the ends. */
function wetScoreAt(table: Float64Array, start: number, logRatio: number): number {
  const position = (logRatio - wetGrid.from) / wetGrid.step
  const k = position <= 0 ? 0 : position >= lastKnot ? lastKnot - 1 : Math.floor(position)
  const low = table[start + k]!
  return low + (position - k) * (table[start + k + 1]! - low)
}

function logRatioAt(table: Float64Array, start: number, wetScore: number): number {
  let low = 0
  let high = lastKnot
  while (high - low > 1) {
    const mid = (low + high) >> 1
    if (table[start + mid]! <= wetScore) low = mid
    else high = mid
  }
  const at = table[start + low]!
  return wetGrid.from + wetGrid.step * (low + (wetScore - at) / (table[start + low + 1]! - at))
}

export function scoreScale(climate: Climate, gauge: number, month: number): ScoreScale {
  const dryShare = climate.dryShare[gauge * 12 + month]!
  const logScale = Math.log(climate.scaleMm[gauge * 12 + month]!)
  const dryBelowMm = climate.resolutionMm[gauge]! / 2
  const tableStart = month * wetGrid.count
  const firstCell = wetScoreAt(climate.wetScore, tableStart, Math.log(dryBelowMm) - logScale)
  const scale: ScoreScale = {
    month,
    dryThreshold: normalQuantile(dryShare),
    oneMmScore: 0,
    logScale,
    wetFactor: (1 - dryShare) / normalCdf(-firstCell),
    dryBelowMm,
    tableStart,
    table: climate.wetScore,
  }
  scale.oneMmScore = scoreOfAmount(scale, Math.max(1, 2 * dryBelowMm))
  return scale
}

/** Normal score of an amount (mm); the dry threshold for anything the gauge does not resolve. */
export function scoreOfAmount(scale: ScoreScale, amountMm: number): number {
  if (amountMm <= scale.dryBelowMm) return scale.dryThreshold
  const wetScore = wetScoreAt(scale.table, scale.tableStart, Math.log(amountMm) - scale.logScale)
  return -normalQuantile(scale.wetFactor * normalCdf(-wetScore))
}

/** Amount (mm) of a normal score; 0 below the dry threshold. */
export function amountOfScore(scale: ScoreScale, score: number): number {
  if (score <= scale.dryThreshold) return 0
  const survival = normalCdf(-score) / scale.wetFactor
  return Math.exp(scale.logScale + logRatioAt(scale.table, scale.tableStart, -normalQuantile(survival)))
}
