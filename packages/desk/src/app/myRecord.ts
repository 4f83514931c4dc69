/** The gauge's own record, for its observer: this month, this year, the rank of the newest day, the last years. */
import type { Actor, MyRecord } from '@gaugewright/contract'
import { daysInMonth, epochDayFromIso, type IsoDay, isoFromEpochDay, type Reading } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { ownGauge } from './my/ownGauge.ts'
import { rankOf, sumOf, within } from './my/recordSums.ts'

const FIRST_DAY = '1800-01-01'
const YEARS_SHOWN = 10
const YEARS_FOR_USUAL = 3
/** Of the same days in an earlier year, the share that must have been read to be compared with. */
const MOST_OF_THEM = 0.9

export async function myRecord(
  ports: Pick<Ports, 'ledger' | 'clock'>,
  ask: { actor: Actor; gauge: string },
): Promise<Answer<MyRecord>> {
  const { ledger } = ports
  const found = await ownGauge(ports, ask.actor, ask.gauge)
  if (!found.ok) return found
  const { network, gauge, days, nowUtc } = found.value
  const current = days.dayOf(Date.parse(nowUtc))
  const readings = await ledger.readingsOfGauge(network.id, gauge.id, FIRST_DAY, isoFromEpochDay(current + 1))
  const newest = readings.at(-1)?.lastDay
  const today = newest !== undefined && epochDayFromIso(newest) >= current - 1 ? newest : isoFromEpochDay(current - 1)
  const year = Number(today.slice(0, 4))
  const monthStart = `${today.slice(0, 7)}-01`
  const thisMonth = within(readings, monthStart, today)
  return answered({
    unit: network.unit,
    gaugeName: gauge.name,
    firstDay: readings[0]?.firstDay ?? null,
    monthDays: monthDays(thisMonth, monthStart, today),
    month: sumOf(thisMonth, dayCount(monthStart, today)),
    monthUsualUm: usualUm(readings, monthStart, today),
    months: monthsOf(readings, year, today),
    year: sumOf(within(readings, `${year}-01-01`, today), dayCount(`${year}-01-01`, today)),
    rank: rankOf(readings),
    years: yearsOf(readings, year, today),
  })
}

function dayCount(fromDay: IsoDay, toDay: IsoDay): number {
  return epochDayFromIso(toDay) - epochDayFromIso(fromDay) + 1
}

function monthDays(readings: readonly Reading[], fromDay: IsoDay, toDay: IsoDay): MyRecord['monthDays'] {
  const from = epochDayFromIso(fromDay)
  return Array.from({ length: dayCount(fromDay, toDay) }, (_, index) => {
    const day = isoFromEpochDay(from + index)
    const reading = readings.find(({ lastDay }) => lastDay === day)
    if (reading === undefined) return { day, amountUm: null, isTrace: false, spanDays: 1 }
    const { amountUm, isTrace, firstDay, lastDay } = reading
    return { day, amountUm, isTrace, spanDays: dayCount(firstDay, lastDay) }
  })
}

function monthsOf(readings: readonly Reading[], year: number, today: IsoDay): MyRecord['months'] {
  return Array.from({ length: Number(today.slice(5, 7)) }, (_, index) => {
    const month = `${year}-${String(index + 1).padStart(2, '0')}`
    const last = `${month}-${String(daysInMonth(year, index + 1)).padStart(2, '0')}`
    const to = last < today ? last : today
    return { month, ...sumOf(within(readings, `${month}-01`, to), dayCount(`${month}-01`, to)) }
  })
}

function yearsOf(readings: readonly Reading[], year: number, today: IsoDay): MyRecord['years'] {
  const first = Number(readings[0]?.lastDay.slice(0, 4) ?? year)
  const from = Math.max(first, year - YEARS_SHOWN + 1)
  return Array.from({ length: year - from + 1 }, (_, index) => {
    const one = from + index
    const last = one === year ? today : `${one}-12-31`
    const sameDay = sameDayIn(one, today)
    const sum = sumOf(within(readings, `${one}-01-01`, last), dayCount(`${one}-01-01`, last))
    return { year: one, ...sum, toDateUm: sumOf(within(readings, `${one}-01-01`, sameDay), 366).totalUm }
  })
}

/** 29 February has its place at the end of the month in other years. */
function sameDayIn(year: number, day: IsoDay): IsoDay {
  const month = Number(day.slice(5, 7))
  const date = Math.min(Number(day.slice(8, 10)), daysInMonth(year, month))
  return `${year}-${day.slice(5, 7)}-${String(date).padStart(2, '0')}`
}

/** Mean over earlier years that read most of the same days of the month; null where fewer than three did. */
function usualUm(readings: readonly Reading[], monthStart: IsoDay, today: IsoDay): number | null {
  const year = Number(today.slice(0, 4))
  const first = Number(readings[0]?.lastDay.slice(0, 4) ?? year)
  const totals: number[] = []
  for (let one = first; one < year; one++) {
    const to = sameDayIn(one, today)
    const days = dayCount(`${one}${monthStart.slice(4)}`, to)
    const sum = sumOf(within(readings, `${one}${monthStart.slice(4)}`, to), days)
    if (sum.readDays >= MOST_OF_THEM * days) totals.push(sum.totalUm)
  }
  if (totals.length < YEARS_FOR_USUAL) return null
  return Math.round(totals.reduce((a, b) => a + b, 0) / totals.length)
}
