import { type DailyTable, emptyDailyTable } from './dailyTable.ts'

/** Some rows (days) of a table as a table of their own; a copy. */
export function tableRows(table: DailyTable, firstRow: number, rows: number): DailyTable {
  const n = table.gaugeCount
  const part = emptyDailyTable(n, table.firstDay + firstRow, rows)
  const from = firstRow * n
  const to = (firstRow + rows) * n
  part.amountMm.set(table.amountMm.subarray(from, to))
  part.isTrace.set(table.isTrace.subarray(from, to))
  part.spanDays.set(table.spanDays.subarray(from, to))
  part.settled.set(table.settled.subarray(from, to))
  if (table.isConfirmed !== undefined) part.isConfirmed = table.isConfirmed.slice(from, to)
  return part
}

export function latestRows(table: DailyTable, rows: number): DailyTable {
  const count = Math.min(rows, table.dayCount)
  return tableRows(table, table.dayCount - count, count)
}
