import { emptyDailyTable } from '@gaugewright/science'
import { expect, it } from 'vitest'
import { gaugeOf } from '../../../test/support/records.ts'
import { dayAmounts, withChanges } from './dayAmounts.ts'

const gauges = [gaugeOf('a', { resolutionUm: 254 }), gaugeOf('b', { resolutionUm: null }), gaugeOf('c')]

function tableOf() {
  const table = emptyDailyTable(3, 100, 2)
  table.amountMm.set([1.5, Number.NaN, 7], 3)
  table.spanDays.set([1, 0, 3], 3)
  table.isTrace.set([1, 0, 0], 3)
  return table
}

it('dayAmounts takes single days; a total over several days and silence are missing, not zero', () => {
  const day = dayAmounts(tableOf(), 101, gauges)
  expect([...day.amountMm]).toEqual([1.5, Number.NaN, Number.NaN])
  expect([...(day.isTrace ?? [])]).toEqual([1, 0, 0])
  expect(day.resolutionMm).toEqual(Float64Array.of(0.254, 0.1, 0.1))
})

it('withChanges leaves the day it was given as it was', () => {
  const day = dayAmounts(tableOf(), 101, gauges)
  const changed = withChanges(day, [
    { gauge: 2, amountMm: 4, isTrace: false },
    { gauge: 0, amountMm: Number.NaN, isTrace: false },
  ])
  expect([...changed.amountMm]).toEqual([Number.NaN, Number.NaN, 4])
  expect([...day.amountMm]).toEqual([1.5, Number.NaN, Number.NaN])
})
