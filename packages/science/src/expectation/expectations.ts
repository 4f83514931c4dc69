/**
 * What should have fallen at places on days, as arrays: the answer of expectLeaveOneOut.ts (the gauges themselves) and of
 * expectAtPoints.ts (anywhere). Turning one predictive distribution into its figures is here.
 */
import { amountOfScore } from '../climate/scores.ts'
import { ScienceError } from '../error.ts'
import type { Model } from '../model/model.ts'
import { meanAmountMm } from './meanAmount.ts'
import { MixtureScores } from './mixtureScores.ts'
import { dryChance, type Predictive } from './predictive.ts'

export interface ExpectAsk {
  /** Epoch days, both included; days outside the judged table are left out. */
  fromDay: number
  toDay: number
  /** Levels of the quantiles, between 0 and 1, ascending; evenLevels(n) for n even ones. */
  levels: Float64Array
}

/** Index of a place (gauge or point) on a day: (day - firstDay) * placeCount + place. */
export interface Expectations {
  placeCount: number
  firstDay: number
  dayCount: number
  levels: Float64Array
  /** Chance that the place resolves nothing. */
  dryChance: Float64Array
  meanMm: Float64Array
  /** Index * levels.length + level; non-decreasing, 0 where the level lies below the chance of dry. */
  quantilesMm: Float64Array
  /** Reports that took part; 0 where nothing but the climate speaks. */
  neighbourCount: Uint8Array
}

/** Levels (k - 0.5) / count for k = 1…count. */
export function evenLevels(count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, k) => (k + 0.5) / count)
}

/**
 * The model with which to judge a table for expectations alone: reports are taken as believed, but for the few that
 * cannot be (common practice: 1 in 200).
 */
export function believingModel(model: Model): Model {
  return { ...model, mistakeRate: Math.min(model.mistakeRate, 0.005) }
}

/** @throws {ScienceError} OUT_OF_DOMAIN for a level outside (0, 1) or one below the level before it */
export function openExpectations(
  placeCount: number,
  table: { firstDay: number; dayCount: number },
  ask: ExpectAsk,
): Expectations {
  ask.levels.forEach((level, k) => {
    if (!(level > 0 && level < 1) || level < (ask.levels[k - 1] ?? 0))
      throw new ScienceError('OUT_OF_DOMAIN', `level ${k} is ${level}; levels ascend between 0 and 1`)
  })
  const firstDay = Math.max(ask.fromDay, table.firstDay)
  const dayCount = Math.max(0, Math.min(ask.toDay, table.firstDay + table.dayCount - 1) - firstDay + 1)
  const cells = placeCount * dayCount
  return {
    placeCount,
    firstDay,
    dayCount,
    levels: ask.levels,
    dryChance: new Float64Array(cells),
    meanMm: new Float64Array(cells),
    quantilesMm: new Float64Array(cells * ask.levels.length),
    neighbourCount: new Uint8Array(cells),
  }
}

/** Writes predictive distributions into the arrays. */
export function expectationWriter(out: Expectations): (index: number, p: Predictive) => void {
  const above = new MixtureScores(out.levels)
  const below = new MixtureScores(out.levels)
  const count = out.levels.length
  return (index, p) => {
    out.dryChance[index] = dryChance(p)
    out.meanMm[index] = meanAmountMm(p)
    const at = index * count
    const high = above.standardFor(p.shareHigh, p.wideHigh / p.sdHigh)
    const low = below.standardFor(p.shareLow, p.wideLow / p.sdLow)
    for (let k = count - 1; k >= 0; k--) {
      const score = out.levels[k]! < 0.5 ? p.sdLow * low[k]! : p.sdHigh * high[k]!
      const amountMm = amountOfScore(p.scale, p.mean + score)
      if (amountMm === 0) break // and so are all lower levels
      out.quantilesMm[at + k] = amountMm
    }
  }
}
