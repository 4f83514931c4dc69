/** An archive as one table: the readings, with the history's days in front of them where the readings have none. */
import { type DailyTable, emptyDailyTable } from '@gaugewright/science'

/**
 * @param readings  as given; both tables have the same gauges in the same order
 * @param history   only its days before `fromDay` are taken; where both hold a report, the readings' one is kept
 * @returns a table from the first day of either to the last of the readings, its arrays shared between threads
 */
export function archiveTable(readings: DailyTable, history: DailyTable | null, fromDay: number): DailyTable {
  const hasHistory = history !== null && history.firstDay < fromDay
  const firstDay = hasHistory ? Math.min(history.firstDay, readings.firstDay) : readings.firstDay
  const dayCount = readings.firstDay + readings.dayCount - firstDay
  const table = sharedTable(readings.gaugeCount, firstDay, dayCount)
  if (hasHistory) copyRows(history, table, history.firstDay, Math.min(fromDay, history.firstDay + history.dayCount))
  copyRows(readings, table, readings.firstDay, readings.firstDay + readings.dayCount)
  return table
}

/** The rows of a table before a day, without copying its cells. */
export function daysBefore(table: DailyTable, day: number): DailyTable {
  const dayCount = Math.max(0, Math.min(table.dayCount, day - table.firstDay))
  const cells = dayCount * table.gaugeCount
  return {
    gaugeCount: table.gaugeCount,
    firstDay: table.firstDay,
    dayCount,
    amountMm: table.amountMm.subarray(0, cells),
    isTrace: table.isTrace.subarray(0, cells),
    spanDays: table.spanDays.subarray(0, cells),
    settled: table.settled.subarray(0, cells),
  }
}

/** Rows `fromDay`…`toDay` (both included) of a table, as far as it has them, without copying its cells. */
export function daysBetween(table: DailyTable, fromDay: number, toDay: number): DailyTable {
  const until = daysBefore(table, toDay + 1)
  const skipped = Math.max(0, Math.min(until.dayCount, fromDay - table.firstDay))
  const cells = skipped * table.gaugeCount
  return {
    gaugeCount: table.gaugeCount,
    firstDay: table.firstDay + skipped,
    dayCount: until.dayCount - skipped,
    amountMm: until.amountMm.subarray(cells),
    isTrace: until.isTrace.subarray(cells),
    spanDays: until.spanDays.subarray(cells),
    settled: until.settled.subarray(cells),
  }
}

function sharedTable(gaugeCount: number, firstDay: number, dayCount: number): DailyTable {
  const cells = gaugeCount * dayCount
  const shared = (bytes: number): SharedArrayBuffer => new SharedArrayBuffer(bytes)
  return {
    ...emptyDailyTable(gaugeCount, firstDay, 0),
    dayCount,
    amountMm: new Float64Array(shared(8 * cells)).fill(Number.NaN),
    isTrace: new Uint8Array(shared(cells)),
    spanDays: new Uint8Array(shared(cells)),
    settled: new Float32Array(shared(4 * cells)).fill(Number.NaN),
  }
}

function copyRows(from: DailyTable, to: DailyTable, firstDay: number, endDay: number): void {
  const { gaugeCount } = to
  for (let day = Math.max(firstDay, to.firstDay); day < Math.min(endDay, to.firstDay + to.dayCount); day++) {
    const source = (day - from.firstDay) * gaugeCount
    const target = (day - to.firstDay) * gaugeCount
    for (let gauge = 0; gauge < gaugeCount; gauge++) {
      if (from.spanDays[source + gauge] === 0) continue
      to.amountMm[target + gauge] = from.amountMm[source + gauge] ?? Number.NaN
      to.isTrace[target + gauge] = from.isTrace[source + gauge] ?? 0
      to.spanDays[target + gauge] = from.spanDays[source + gauge] ?? 0
      to.settled[target + gauge] = from.settled[source + gauge] ?? Number.NaN
    }
  }
}
