import { type DailyTable, emptyDailyTable } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { archiveTable, daysBefore, daysBetween } from './archiveTable.ts'

/** Two gauges; amounts name their day and gauge: day 3, gauge 1 holds 3.1. NaN where `missing` says so. */
function tableOf(firstDay: number, dayCount: number, plus = 0, missing: number[] = []): DailyTable {
  const table = emptyDailyTable(2, firstDay, dayCount)
  for (let row = 0; row < dayCount; row++) {
    for (let gauge = 0; gauge < 2; gauge++) {
      if (missing.includes(firstDay + row)) continue
      table.amountMm[row * 2 + gauge] = firstDay + row + gauge / 10 + plus
      table.spanDays[row * 2 + gauge] = 1
    }
  }
  return table
}
const column = (table: DailyTable, gauge: number): number[] =>
  Array.from({ length: table.dayCount }, (_, row) => table.amountMm[row * 2 + gauge] ?? Number.NaN)

describe('archiveTable', () => {
  it('puts the history in front and lets the readings win where both reported', () => {
    const joined = archiveTable(tableOf(12, 3, 0, [12]), tableOf(10, 4, 100), 13)
    expect(joined.firstDay).toBe(10)
    expect(column(joined, 1)).toEqual([110.1, 111.1, 112.1, 13.1, 14.1])
  })

  it('takes nothing of the history from the first day judged on: that would be looking at the answer', () => {
    const joined = archiveTable(tableOf(12, 3, 0, [13]), tableOf(10, 9, 100), 12)
    expect(column(joined, 0)).toEqual([110, 111, 12, Number.NaN, 14])
  })

  it('is shared between threads', () => {
    expect(archiveTable(tableOf(1, 2), null, 1).amountMm.buffer).toBeInstanceOf(SharedArrayBuffer)
  })
})

describe('parts of a table', () => {
  it('daysBefore and daysBetween cut rows at the days asked for and at the ends of the table', () => {
    const table = tableOf(20, 5)
    expect(column(daysBefore(table, 22), 0)).toEqual([20, 21])
    expect(daysBefore(table, 5).dayCount).toBe(0)
    const part = daysBetween(table, 22, 23)
    expect([part.firstDay, ...column(part, 1)]).toEqual([22, 22.1, 23.1])
    expect(column(daysBetween(table, 1, 99), 0)).toEqual([20, 21, 22, 23, 24])
  })
})
