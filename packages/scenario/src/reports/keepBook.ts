/**
 * Years of honest reports of one gauge: when its observer looks, what they find and write, what is missed, and what
 * becomes of the water of missed days. Totals sent as one day's amount, and zeros typed for days nobody looked, are
 * made here, because they follow from how the days were missed.
 */
import type { Observer, Service } from '../people/observer.ts'
import type { Random } from '../random/random.ts'
import type { HourlyRain } from '../weather/hourlyRain.ts'
import { readGauge, writeDown } from './readGauge.ts'
import { clearCell, type ReportTable, truthKind } from './reportTable.ts'

const LONGEST_DECLARED_DAYS = 14
const LONGEST_HIDDEN_DAYS = 4
/** Rain (mm) in days typed as zero that makes the zero a false one. */
const FALSE_ZERO_MM = 0.2

export interface Book {
  gauge: number
  observer: Observer
  service: Service
  rain: HourlyRain
}

export function keepBook(table: ReportTable, book: Book, random: Random): void {
  const { observer, service, rain } = book
  const start = Math.max(0, service.openedOn - table.firstDay)
  const end = Math.min(table.dayCount - 1, (service.closedOn ?? Number.POSITIVE_INFINITY) - table.firstDay)
  let emptiedHour = hourOf(table, rain, start - 1, observer.readsAtMin)
  let emptiedDay = start - 1
  for (let day = start; day <= end; day++) {
    const endMin = readingMinute(observer, weekday(table.firstDay + day), random)
    const isLastMorning = day === table.dayCount - 1
    if (!looks(book, table.firstDay + day, isLastMorning, random)) continue
    const hour = hourOf(table, rain, day, endMin)
    const missed = day - emptiedDay - 1
    const report = { table, book, day, endMin, emptiedHour, emptiedDay, hour, random }
    if (missed === 0 || isLastMorning) {
      if (isLastMorning || !random.chance(observer.keepsBack)) reportDay(report)
    } else afterGap(report, missed)
    emptiedHour = hour
    emptiedDay = day
  }
}

interface Look {
  table: ReportTable
  book: Book
  day: number
  endMin: number
  emptiedHour: number
  emptiedDay: number
  hour: number
  random: Random
}

function reportDay(look: Look): void {
  const { table, book, day } = look
  const mm = book.rain.between(book.gauge, Math.max(look.emptiedHour, look.hour - 30), look.hour)
  write(look, day, mm, mm, 1)
  table.ownFirst[cellOf(look, day)] = day
}

function afterGap(look: Look, missed: number): void {
  const { book, day, random } = look
  const { observer, rain, gauge } = book
  const totalMm = rain.between(gauge, look.emptiedHour, look.hour)
  const outcome = random.next()
  if (missed < LONGEST_DECLARED_DAYS && outcome < observer.declaresTotal) {
    write(look, day, totalMm, totalMm, missed + 1)
    return
  }
  if (
    missed > LONGEST_HIDDEN_DAYS ||
    outcome > observer.declaresTotal + observer.sendsTotalAsDay + observer.fillsWithZeros
  ) {
    return
  }
  const dayMm = rain.between(gauge, look.hour - 24, look.hour)
  const cell = write(look, day, totalMm, dayMm, 1)
  if (totalMm - dayMm > Math.max(0.6, 0.15 * dayMm)) look.table.kind[cell] = truthKind('carried')
  if (outcome < observer.declaresTotal + observer.sendsTotalAsDay) return
  for (let back = missed; back >= 1; back--) {
    const hour = hourOf(look.table, rain, day - back, observer.readsAtMin)
    const mm = rain.between(gauge, hour - 24, hour)
    const zero = write({ ...look, endMin: observer.readsAtMin }, day - back, 0, mm, 1)
    if (mm >= FALSE_ZERO_MM) look.table.kind[zero] = truthKind('false-zero')
    look.table.ownFirst[zero] = day - back
  }
}

/** Fill a cell with what was written down for `typedMm`, when the days it claims to cover held `caughtMm`. */
function write(look: Look, day: number, typedMm: number, caughtMm: number, spanDays: number): number {
  const { table, book, random } = look
  const cell = cellOf(look, day)
  const written = writeDown(readGauge(typedMm, book.observer, random), book.observer, random)
  clearCell(table, cell)
  table.typed[cell] = written.hundredths
  table.isTrace[cell] = written.isTrace ? 1 : 0
  table.inMm[cell] = book.observer.unit === 'mm' ? 1 : 0
  table.spanDays[cell] = spanDays
  table.endMin[cell] = look.endMin
  table.delayMin[cell] = sendingDelay(book.observer, random)
  table.caughtMm[cell] = caughtMm
  table.honest[cell] = typedMm === caughtMm ? written.hundredths : readGauge(caughtMm, book.observer, random).hundredths
  table.ownFirst[cell] = look.emptiedDay + 1
  table.ownLast[cell] = day
  return cell
}

function looks(book: Book, epochDay: number, isLastMorning: boolean, random: Random): boolean {
  const { service, observer } = book
  const covers = (stretch: { firstDay: number; lastDay: number }) =>
    stretch.firstDay <= epochDay && epochDay <= stretch.lastDay
  if (service.dropouts.some(covers) || service.absences.some(covers)) return false
  if (isLastMorning) return true
  const isWeekend = weekday(epochDay) % 6 === 0
  return !random.chance(isWeekend ? Math.max(observer.forgets, observer.forgetsWeekend) : observer.forgets)
}

function readingMinute(observer: Observer, dayOfWeek: number, random: Random): number {
  const later = dayOfWeek % 6 === 0 ? observer.weekendLaterMin : 0
  return Math.round(Math.min(660, Math.max(300, observer.readsAtMin + later + observer.spreadMin * random.normal())))
}

function sendingDelay(observer: Observer, random: Random): number {
  const promptMin = Math.min(90, random.logNormal(observer.sendsAfterMin, 0.6))
  if (!random.chance(observer.sendsLate)) return Math.round(promptMin)
  return Math.round(promptMin + random.between(300, 900) + (random.chance(0.3) ? 1440 * (1 + random.below(4)) : 0))
}

function cellOf(look: Look, day: number): number {
  return day * look.table.gaugeCount + look.book.gauge
}

/** Hour of the weather's clock for a minute of a day index. */
export function hourOf(table: ReportTable, rain: HourlyRain, day: number, minute: number): number {
  return (table.firstDay + day - rain.originDay) * 24 + minute / 60
}

/** 0 Sunday to 6 Saturday. */
export function weekday(epochDay: number): number {
  return (((epochDay + 4) % 7) + 7) % 7
}
