import { type DailyTable, emptyDailyTable } from '../../src/network/dailyTable.ts'

/** One cell to write: mm, NaN for no report; days covered (1 unless said); a trace; settled by a person. */
export interface ReportToWrite {
  gauge: number
  day: number
  amountMm: number
  spanDays?: number
  isTrace?: boolean
  isSettled?: boolean
}

/** A copy of the table with some cells written anew; all else as it was. */
export function withReports(table: DailyTable, reports: readonly ReportToWrite[]): DailyTable {
  const copy = emptyDailyTable(table.gaugeCount, table.firstDay, table.dayCount)
  copy.amountMm.set(table.amountMm)
  copy.isTrace.set(table.isTrace)
  copy.spanDays.set(table.spanDays)
  copy.settled.set(table.settled)
  for (const { gauge, day, amountMm, spanDays = 1, isTrace = false, isSettled = false } of reports) {
    const i = (day - table.firstDay) * table.gaugeCount + gauge
    copy.amountMm[i] = amountMm
    copy.spanDays[i] = Number.isNaN(amountMm) ? 0 : spanDays
    copy.isTrace[i] = isTrace ? 1 : 0
    copy.settled[i] = isSettled ? 1 : Number.NaN
  }
  return copy
}
