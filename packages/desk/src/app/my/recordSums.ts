/** Sums over a gauge's own readings. A total counts with the days that it covers, and in the month and year it ends in. */
import type { MyRecord } from '@gaugewright/contract'
import { epochDayFromIso, type IsoDay, type Reading, sumAmounts } from '@gaugewright/science'

export type OwnSum = MyRecord['year']

/** @param days  days of the period that have passed */
export function sumOf(readings: readonly Reading[], days: number): OwnSum {
  const sum = sumAmounts(readings)
  let wetDays = 0
  let readDays = 0
  for (const { firstDay, lastDay, amountUm, isTrace } of readings) {
    if (firstDay === lastDay && (amountUm > 0 || isTrace)) wetDays++
    readDays += epochDayFromIso(lastDay) - epochDayFromIso(firstDay) + 1
  }
  return {
    totalUm: sum?.amountUm ?? 0,
    isTrace: sum?.isTrace ?? false,
    wetDays,
    readDays: Math.min(readDays, days),
    days,
  }
}

export function within(readings: readonly Reading[], fromDay: IsoDay, toDay: IsoDay): Reading[] {
  return readings.filter(({ lastDay }) => lastDay >= fromDay && lastDay <= toDay)
}

/** Place of the newest daily reading among the wet daily readings, largest first; ties share the better place. */
export function rankOf(readings: readonly Reading[]): MyRecord['rank'] {
  const daily = readings.filter(({ firstDay, lastDay }) => firstDay === lastDay)
  const newest = daily.at(-1)
  if (newest === undefined || newest.amountUm === 0) return null
  const wet = daily.filter(({ amountUm }) => amountUm > 0)
  const month = newest.lastDay.slice(5, 7)
  const ofMonth = wet.filter(({ lastDay }) => lastDay.slice(5, 7) === month)
  const place = (among: readonly Reading[]): number =>
    1 + among.filter(({ amountUm }) => amountUm > newest.amountUm).length
  return {
    day: newest.lastDay,
    amountUm: newest.amountUm,
    place: place(wet),
    of: wet.length,
    placeInMonth: place(ofMonth),
    ofMonth: ofMonth.length,
  }
}
