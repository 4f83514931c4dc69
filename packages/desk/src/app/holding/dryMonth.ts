import { isoFromEpochDay, type Occasion } from '@gaugewright/science'
import { leafOf } from './leafOf.ts'
import type { Past } from './pastOf.ts'
import { periodDays } from './periodDays.ts'

const MOST_WET_DAYS = 2
const MOST_MM = 5

/** The last whole month, where it was dry and every morning of it was answered: zeros that nobody else could tell. */
export function dryMonth(past: Past, index: number): Occasion | undefined {
  const thisMonth = periodDays(isoFromEpochDay(past.lastDay + 1).slice(0, 7)).first
  const month = isoFromEpochDay(thisMonth - 1).slice(0, 7)
  const { first, last } = periodDays(month)
  if (first < past.firstDay) return undefined
  const { answered, wetDays, totalMm } = leafOf(past, index, first, last)
  const days = last - first + 1
  if (answered < days || wetDays > MOST_WET_DAYS || totalMm > MOST_MM) return undefined
  return { kind: 'whole dry month', key: `dry ${month}`, day: last, days }
}
