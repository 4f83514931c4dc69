import { emptyDailyTable } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { weightyDays } from './doubtfulReadings.ts'

const FIRST = 20_000

function yearOfDrizzle(days: number) {
  const table = emptyDailyTable(3, FIRST, days)
  table.spanDays.fill(1)
  table.amountMm.fill(0.1)
  return table
}

describe('weightyDays', () => {
  it('are all of a month', () => {
    const past = { table: yearOfDrizzle(365), firstDay: FIRST }
    expect(weightyDays(past, FIRST + 31, FIRST + 61)).toEqual(Array.from({ length: 31 }, (_, at) => FIRST + 31 + at))
  })

  it('of a year are those with most at one gauge and over all, in their order; silence weighs nothing', () => {
    const table = yearOfDrizzle(365)
    table.amountMm[200 * 3 + 1] = 90
    for (const gauge of [0, 1, 2]) table.amountMm[300 * 3 + gauge] = 40
    table.amountMm[10 * 3] = Number.NaN
    table.spanDays[10 * 3] = 0
    const days = weightyDays({ table, firstDay: FIRST }, FIRST, FIRST + 364)
    expect(days).toHaveLength(62)
    expect(days).toEqual([...days].sort((a, b) => a - b))
    expect(days).toEqual(expect.arrayContaining([FIRST + 200, FIRST + 300]))
  })
})
