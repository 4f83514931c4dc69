/**
 * The dense table that the kernels judge, made from the accepted record of the days around a morning.
 * A cell holds what ends on that day: amended amounts are settled, set-aside readings are simply missing, and days that
 * a settled total covers are left to that total.
 */
import { type DailyTable, emptyDailyTable, epochDayFromIso } from '@gaugewright/science'
import type { AcceptedReading } from './acceptedRecord.ts'

const UM_PER_MM = 1000
const MAX_SPAN_DAYS = 255

/**
 * @param accepted   one entry per reading; entries of gauges not in `indexOf` or days outside the table are left out
 * @param indexOf    column of each gauge id
 * @param firstDay   epoch day of the first row
 * @returns table (depths in mm) and, cell by cell, the id of the reading in it
 */
export function morningTable(
  accepted: readonly AcceptedReading[],
  indexOf: ReadonlyMap<string, number>,
  firstDay: number,
  dayCount: number,
): { table: DailyTable; readingIds: (string | undefined)[] } {
  const isConfirmed = new Uint8Array(indexOf.size * dayCount)
  const table = { ...emptyDailyTable(indexOf.size, firstDay, dayCount), isConfirmed }
  const readingIds: (string | undefined)[] = new Array(indexOf.size * dayCount)
  const settledFirst = [...accepted].sort((a, b) => Number(b.settled) - Number(a.settled))
  const coveredBySettled = new Uint8Array(indexOf.size * dayCount)
  for (const entry of settledFirst) {
    const column = indexOf.get(entry.reading.gaugeId)
    const row = epochDayFromIso(entry.lastDay) - firstDay
    if (column === undefined || row < 0 || row >= dayCount) continue
    const cell = row * indexOf.size + column
    const spanDays = epochDayFromIso(entry.lastDay) - epochDayFromIso(entry.firstDay) + 1
    const taken = table.spanDays[cell] !== 0
    if (spanDays > MAX_SPAN_DAYS || (taken && (table.spanDays[cell] ?? 0) <= spanDays)) continue
    if (!entry.settled && coveredBySettled[cell] === 1) continue
    table.amountMm[cell] = entry.amountUm / UM_PER_MM
    table.isTrace[cell] = entry.isTrace ? 1 : 0
    table.spanDays[cell] = spanDays
    table.settled[cell] = entry.settled ? 1 : Number.NaN
    readingIds[cell] = entry.reading.id
    isConfirmed[cell] = entry.reading.confirmed === undefined ? 0 : 1
    if (!entry.settled) continue
    for (let back = 0; back < spanDays && row - back >= 0; back++) {
      coveredBySettled[(row - back) * indexOf.size + column] = 1
    }
  }
  return { table, readingIds }
}
