/**
 * The check at entry by the gauge's own climate alone: on a phone without a signal, or where no neighbour has reported.
 * The same explanations as the desk weighs (sources.ts), with what is usual for the time of year as the expectation.
 */
import { monthOfEpochDay } from '../climate/climate.ts'
import { scoreScale } from '../climate/scores.ts'
import { amountMoments, dryChance, type Predictive } from '../expectation/predictive.ts'
import { type AmountLaw, dailyLaw, sumLaw } from '../mistakes/amountLaw.ts'
import { readerOf } from '../mistakes/readMass.ts'
import { sourcesOf } from '../mistakes/sources.ts'
import type { EpochDay } from '../reading/epochDay.ts'
import { type EntryQuestion, entryQuestion } from './entryQuestion.ts'
import type { PocketClimate } from './pocketClimate.ts'

export interface EntryTypedAt {
  amountUm: number
  isTrace: boolean
  firstDay: EpochDay
  lastDay: EpochDay
  /** Reported for the day before, µm; null where nothing was. */
  previousUm: number | null
}

const umPerMm = 1000

export function checkAlone(own: PocketClimate, typed: EntryTypedAt): EntryQuestion | null {
  const { climate, mistakeRate, tubeMm } = own
  const resolutionMm = climate.resolutionMm[0]!
  const report = {
    amountMm: typed.amountUm / umPerMm,
    isTrace: typed.isTrace,
    previousMm: typed.previousUm === null || typed.firstDay < typed.lastDay ? Number.NaN : typed.previousUm / umPerMm,
    resolutionMm,
    reader: readerOf(climate.rounding, 0),
    tubeMm,
  }
  const sources = sourcesOf(report, climateLaw(own, typed.firstDay, typed.lastDay), mistakeRate)
  const asked = { amountUm: typed.amountUm, stepUm: Math.round(resolutionMm * umPerMm), tubeUm: tubeMm * umPerMm }
  return entryQuestion(
    asked,
    sources.map(({ kind, weight, detail }) => ({ kind, odds: weight, detail })),
  )
}

/** A score of the climate is standard normal by its making. */
function climateLaw(own: PocketClimate, firstDay: EpochDay, lastDay: EpochDay): AmountLaw {
  const usual = (day: EpochDay): Predictive => ({
    mean: 0,
    sdLow: 1,
    sdHigh: 1,
    wideLow: 1,
    wideHigh: 1,
    shareLow: 0,
    shareHigh: 0,
    scale: scoreScale(own.climate, 0, monthOfEpochDay(day)),
  })
  if (firstDay === lastDay) return dailyLaw(usual(lastDay))
  const moments = { mean: 0, variance: 0 }
  let mean = 0
  let variance = 0
  let dry = 1
  for (let day = firstDay; day <= lastDay; day++) {
    amountMoments(usual(day), moments)
    mean += moments.mean
    variance += moments.variance
    dry *= dryChance(usual(day))
  }
  return sumLaw(mean, variance, dry)
}
