/**
 * The predictive distribution of one report: the cavity's normal with a widened spread and a heavier-tailed part, on
 * the scale of normal scores; amounts through the gauge's climate. What is known of the spread's calibration lives here.
 */
import { amountOfScore, type ScoreScale, scoreOfAmount } from '../climate/scores.ts'
import type { Spread } from '../model/model.ts'
import { normalCdf } from '../stats/normalCdf.ts'
import type { LatentTable } from './latentTable.ts'
import { mixtureScore } from './mixtureScores.ts'

export interface Predictive {
  /** Median; each half of the law has spreads of its own. */
  mean: number
  sdLow: number
  sdHigh: number
  wideLow: number
  wideHigh: number
  shareLow: number
  shareHigh: number
  scale: ScoreScale
}

/** Cavity means beyond these do not change the calibration further. */
const lowestLevel = -2
const highestLevel = 3
/** Scores over which the calibration passes from dry to wet days. */
const wetBlend = 0.25

export function predictiveOf(
  cavityMean: number,
  cavityVariance: number,
  surroundings: number,
  scale: ScoreScale,
  by: Spread,
): Predictive {
  const m = Math.min(highestLevel, Math.max(lowestLevel, cavityMean))
  const mean = cavityMean + by.shift + (by.slope - 1) * m + by.curve * m * m
  const logSd =
    by.logSd +
    by.monthLogSd[scale.month]! +
    0.5 * by.variancePower * Math.log(cavityVariance) +
    by.surroundingsPower * Math.log(surroundings)
  const level = m * (by.level + by.levelCurve * m)
  const wide = Math.exp(logSd + m * by.wideLevel)
  const wet = 1 / (1 + Math.exp((scale.oneMmScore - cavityMean) / wetBlend))
  const sd = logSd + level
  return {
    mean,
    sdLow: Math.exp(sd - by.skew + wet * by.wetLogLow),
    sdHigh: Math.exp(sd + by.skew + wet * by.wetLogHigh),
    wideLow: wide * by.wideLow,
    wideHigh: wide * by.wideHigh,
    shareLow: by.shareLow,
    shareHigh: by.shareHigh,
    scale,
  }
}

export function predictiveAt(latent: LatentTable, row: number, gauge: number): Predictive {
  const i = row * latent.table.gaugeCount + gauge
  return predictiveOf(
    latent.cavityMean[i]!,
    latent.cavityVariance[i]!,
    latent.spread[i]!,
    latent.scales[gauge * 12 + latent.monthOfDay[row]!]!,
    latent.model.spread,
  )
}

/** Probability that the score lies between two scores; keeps its digits in both tails. */
export function scoreMass(p: Predictive, low: number, high: number): number {
  if (low >= p.mean) return aboveMedian(p, low) - aboveMedian(p, high)
  if (high <= p.mean) return belowMedian(p, high) - belowMedian(p, low)
  return 1 - aboveMedian(p, high) - belowMedian(p, low)
}

function belowMedian(p: Predictive, score: number): number {
  const a = score - p.mean
  return (1 - p.shareLow) * normalCdf(a / p.sdLow) + p.shareLow * normalCdf(a / p.wideLow)
}

function aboveMedian(p: Predictive, score: number): number {
  const a = p.mean - score
  return (1 - p.shareHigh) * normalCdf(a / p.sdHigh) + p.shareHigh * normalCdf(a / p.wideHigh)
}

export function normalMass(low: number, high: number): number {
  return low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low)
}

export function scoreCdf(p: Predictive, score: number): number {
  return score <= p.mean ? belowMedian(p, score) : 1 - aboveMedian(p, score)
}

export function dryChance(p: Predictive): number {
  return scoreCdf(p, p.scale.dryThreshold)
}

/**
 * Chance that a gauge had a shower all its own that no neighbour saw, and what such showers give: lognormal, median and
 * spread of the logarithm. Keeps a reading that nobody can confirm from being called impossible (common practice: a few
 * in a thousand gauge-days, mostly thunderstorms).
 */
const showerChance = 0.002
const showerLogMedian = Math.log(8)
const showerLogSd = 1.3

/** Probability that the true amount lies in (lowMm, highMm]; a low end of 0 or less takes in the dry day. */
export function amountMass(p: Predictive, lowMm: number, highMm: number): number {
  const high = scoreOfAmount(p.scale, highMm)
  const low = lowMm <= 0 ? Number.NEGATIVE_INFINITY : scoreOfAmount(p.scale, lowMm)
  const near = (1 - showerChance) * scoreMass(p, low, high)
  return Math.max(0, highMm <= p.scale.dryBelowMm ? near : near + showerChance * showerMass(lowMm, highMm))
}

function showerMass(lowMm: number, highMm: number): number {
  const low = lowMm <= 0 ? Number.NEGATIVE_INFINITY : (Math.log(lowMm) - showerLogMedian) / showerLogSd
  return normalMass(low, (Math.log(highMm) - showerLogMedian) / showerLogSd)
}

/** Score with the given share below it. */
export function scoreQuantile(p: Predictive, level: number): number {
  return level < 0.5
    ? p.mean + p.sdLow * mixtureScore(level, p.shareLow, p.wideLow / p.sdLow)
    : p.mean + p.sdHigh * mixtureScore(level, p.shareHigh, p.wideHigh / p.sdHigh)
}

/** Amount (mm) with the given share below it, 0 where that share is dry. */
export function amountQuantile(p: Predictive, level: number): number {
  return amountOfScore(p.scale, scoreQuantile(p, level))
}

/** Median of the amount given that it lies above lowMm (or above dry for 0). */
export function medianAbove(p: Predictive, lowMm: number): number {
  const below = scoreCdf(p, scoreOfAmount(p.scale, lowMm))
  return amountQuantile(p, Math.min(1 - 1e-9, below + 0.5 * (1 - below)))
}

/** Mean and variance of the amount (mm, mm²) by even quantiles of the main part; for sums over days. */
export function amountMoments(p: Predictive, out: { mean: number; variance: number }): void {
  let sum = 0
  let squares = 0
  for (let k = 0; k < evenScores.length; k++) {
    const score = evenScores[k]!
    const amountMm = amountOfScore(p.scale, p.mean + (score < 0 ? p.sdLow : p.sdHigh) * score)
    sum += amountMm
    squares += amountMm * amountMm
  }
  out.mean = sum / evenScores.length
  out.variance = Math.max(0, squares / evenScores.length - out.mean * out.mean)
}

/** Normal scores of 16 even levels. */
const evenScores = [
  -1.862732, -1.318011, -1.00999, -0.776422, -0.579132, -0.40225, -0.237202, -0.078412, 0.078412, 0.237202, 0.40225,
  0.579132, 0.776422, 1.00999, 1.318011, 1.862732,
]
