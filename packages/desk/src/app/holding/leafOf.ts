/** What stands on one observer's page: from the table alone. Missing days are never taken as dry. */
import type { DayOfRain, LeafProps } from '@gaugewright/drawings'
import { isoFromEpochDay } from '@gaugewright/science'
import { type Past, statesOf } from './pastOf.ts'

type LeafNumbers = Pick<
  LeafProps,
  'days' | 'totalMm' | 'isTraceOnly' | 'wetDays' | 'wettest' | 'dryDays' | 'expected' | 'answered'
>

export function leafOf(past: Past, index: number, first: number, last: number): LeafNumbers {
  const { table, firstDay } = past
  const states = statesOf(past, index)
  const days: DayOfRain[] = []
  let totalUm = 0
  let hasTrace = false
  let wetDays = 0
  let wettest: LeafProps['wettest'] = null
  let dryRun = 0
  let dryDays = 0
  let expected = 0
  let answeredDays = 0
  for (let day = Math.max(first, firstDay); day <= Math.min(last, past.lastDay); day++) {
    const cell = (day - firstDay) * table.gaugeCount + index
    const spanDays = table.spanDays[cell] ?? 0
    const state = states[day - firstDay]!
    const iso = isoFromEpochDay(day)
    const amountMm = spanDays > 0 ? (table.amountMm[cell] ?? null) : null
    const isTrace = table.isTrace[cell] === 1
    days.push({ day: iso, amountMm, isTrace, spanDays: spanDays > 0 ? spanDays : state === 'silent' ? 1 : 0 })
    if (state === 'silent' || state === 'answered' || state === 'covered') expected++
    if (state === 'answered' || state === 'covered') answeredDays++
    if (amountMm === null) {
      if (state !== 'covered') dryRun = 0
      continue
    }
    totalUm += Math.round(amountMm * 1000)
    hasTrace ||= isTrace
    const isWet = amountMm > 0 || isTrace
    if (isWet) {
      wetDays++
      dryRun = 0
      if (spanDays === 1 && amountMm > (wettest?.amountMm ?? 0)) wettest = { day: iso, amountMm }
    } else dryRun += spanDays
    dryDays = Math.max(dryDays, dryRun)
  }
  return {
    days,
    totalMm: totalUm / 1000,
    isTraceOnly: totalUm === 0 && hasTrace,
    wetDays,
    wettest,
    dryDays,
    expected,
    answered: answeredDays,
  }
}
