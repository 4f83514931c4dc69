import { epochDayFromIso, isoFromEpochDay } from '@gaugewright/science'

/** First and last day of a month `2026-05` or a year `2026`, as epoch days. */
export function periodDays(period: string): { first: number; last: number } {
  const isMonth = period.length === 7
  const first = epochDayFromIso(isMonth ? `${period}-01` : `${period}-01-01`)
  const probe = isoFromEpochDay(first + (isMonth ? 31 : 366))
  const last = epochDayFromIso(isMonth ? `${probe.slice(0, 7)}-01` : `${probe.slice(0, 4)}-01-01`) - 1
  return { first, last }
}
