import type { GaugeHabitsAnswer, WireHabit } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import { FixtureHabits } from '../../../test/fixture/habitsOfFixture.ts'
import { gauges } from '../../../test/fixture/invented.ts'
import { makeFormat } from '../../words/format.ts'
import { messages } from '../../words/messages.ts'
import { habitPlot } from './habitPlots.ts'

const fixture = new FixtureHabits({ unit: 'in', language: 'en' })
const gauge = fixture.one(gauges[0]!.code)!
const words = messages.en
const format = makeFormat(words, 'en', 'in', 'UTC')
const plotOf = (kind: WireHabit['kind'], of: GaugeHabitsAnswer = gauge) =>
  habitPlot(of.habits.find((habit) => habit.kind === kind)!, of, words, format)

describe('habitPlot', () => {
  it('draws every kind, and no two gauges alike', () => {
    for (const { kind } of gauge.habits) expect(plotOf(kind), kind).not.toBeNull()
  })

  it('agreement: five days, the best one marked, with 80 % intervals of the standard errors', () => {
    const plot = plotOf('dated')
    if (plot?.kind !== 'bars') throw new Error('bars wanted')
    expect(plot.bars.map(({ label }) => label)).toEqual(['−2', '−1', '0', '+1', '+2'])
    expect(plot.bars.map(({ isStrong }) => isStrong)).toEqual([false, true, false, false, false])
    expect(plot.bars[1]).toMatchObject({ spoken: 'the day before', shown: '0.71' })
    expect(plot.bars[1]?.error).toBeCloseTo(1.2816 * 0.02, 6)
  })

  it('digits: counts against what unrounded amounts would have, marked where chance does not reach', () => {
    const plot = plotOf('fives')
    if (plot?.kind !== 'bars') throw new Error('bars wanted')
    expect(plot.title).toContain('0.13 in')
    expect(plot.bars.filter(({ isStrong }) => isStrong).map(({ label }) => label)).toEqual(['0', '5'])
    expect(plot.bars[3]).toMatchObject({ value: 7, expected: 18 })
  })

  it('amounts: classes in the network’s unit, those that are missing marked', () => {
    const plot = plotOf('few-light')
    if (plot?.kind !== 'bars') throw new Error('bars wanted')
    expect(plot.bars.map(({ label }) => label)).toEqual(['0.01', '0.03', '0.05', '0.10', '0.20', '0.41', 'more'])
    expect(plot.bars.map(({ isStrong }) => isStrong)).toEqual([true, true, true, false, false, false, false])
  })

  it('the gauge among all gauges: positions keep their order and their proportions', () => {
    const plot = plotOf('mistaken')
    if (plot?.kind !== 'spread') throw new Error('a spread wanted')
    const { value, low, high, network } = plot.marks
    // From 0.7 to 2.8 in all: 2.1 lies at two thirds.
    expect(value).toBeCloseTo((2.1 - 0.7) / 2.1, 9)
    expect([low, high]).toEqual([expect.closeTo(0.8 / 2.1, 9), 1])
    expect(network[0]).toBe(0)
    expect(plot.text).toContain('2.1 times')
  })

  it('draws nothing where nothing was counted', () => {
    const empty = {
      ...gauge,
      agreement: gauge.agreement.map((lag) => ({ ...lag, value: null, error: null })),
      lastDigits: { ...gauge.lastDigits, counts: new Array<number>(10).fill(0) },
      amounts: gauge.amounts.map((row) => ({ ...row, around: 0 })),
      carriedByWeekday: null,
      spread: {},
    }
    for (const { kind } of gauge.habits) expect(plotOf(kind, empty), kind).toBeNull()
  })
})
