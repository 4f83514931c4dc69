import { describe, expect, it } from 'vitest'
import { changed, firstDay, rainyNetwork, rowsOf } from '../../test/support/rainyNetwork.ts'
import { learnModel } from '../model/learnModel.ts'
import type { DailyTable } from '../network/dailyTable.ts'
import { judge } from './judge.ts'
import type { Judgement } from './judgement.ts'
import { mistakes } from './mistake.ts'
import { rejudge } from './rejudge.ts'

const GAUGES = 60
const { gauges, table: whole } = rainyNetwork(77, GAUGES, 160)
const model = learnModel(gauges, rowsOf(whole, 0, 150))
const MORNING = firstDay + 157
const ask = { fromDay: MORNING, toDay: MORNING, sameMorning: false }
const context = rowsOf(whole, 150, 160)
/** Gauge 11 typed ten times too much, gauge 23 a zero, gauge 40 a total with a zero before it. */
const table = changed(context, (amountMm, gauge, day) => {
  if (day === MORNING && gauge === 11) return 10 * (amountMm + 3)
  if (day === MORNING && gauge === 23) return 0
  if (day === MORNING - 1 && gauge === 40) return 0
  return amountMm
})
const before = judge(gauges, table, model, ask)

/** The table with some cells of the morning settled at an amount; NaN sets the report aside. */
function decided(cells: readonly (readonly [gauge: number, amountMm: number])[]): DailyTable {
  const now = changed(table, (amountMm, gauge, day) => {
    const cell = cells.find(([at]) => at === gauge && day === MORNING)
    return cell === undefined ? amountMm : cell[1]
  })
  for (const [gauge, amountMm] of cells) {
    if (!Number.isNaN(amountMm)) now.settled[(MORNING - now.firstDay) * GAUGES + gauge] = 1
  }
  return now
}

function oddsByGauge(judgement: Judgement): Map<number, number> {
  return new Map(Array.from({ length: judgement.count }, (_, c) => [judgement.gauge[c]!, judgement.pStands[c]!]))
}

describe('rejudge', () => {
  it('changes nothing where nothing has changed', () => {
    const same = rejudge(before, decided([]), ask)
    expect(same.count).toBe(before.count)
    expect(same.pStands).toEqual(before.pStands)
    expect(same.proposedMm).toEqual(before.proposedMm)
  })

  it.each([
    ['a slip amended', [[11, context.amountMm[7 * GAUGES + 11]!]]],
    ['a slip let stand', [[11, table.amountMm[7 * GAUGES + 11]!]]],
    ['a zero set aside', [[23, Number.NaN]]],
    [
      'three decided',
      [
        [11, 4],
        [23, Number.NaN],
        [40, 2],
      ],
    ],
  ] as const)('%s: the odds are those of judging all anew, to 0.02, and the likeliest mistakes too', (_, cells) => {
    const now = decided(cells)
    const anew = judge(gauges, now, model, ask)
    const quick = rejudge(before, now, ask)
    expect([...quick.gauge.subarray(0, quick.count)]).toEqual([...anew.gauge.subarray(0, anew.count)])
    const expected = oddsByGauge(anew)
    for (const [gauge, odds] of oddsByGauge(quick)) expect(Math.abs(odds - expected.get(gauge)!)).toBeLessThan(0.02)
    for (let c = 0; c < anew.count; c++) {
      if (anew.pStands[c]! < 0.5) expect(mistakes[quick.mistake[c]!]).toBe(mistakes[anew.mistake[c]!])
    }
  })

  it('a decision moves the odds of neighbours, and taking it back restores every one', () => {
    const amended = rejudge(before, decided([[11, context.amountMm[7 * GAUGES + 11]!]]), ask)
    expect(amended.pStands).not.toEqual(before.pStands)
    expect(rejudge(before, table, ask).pStands).toEqual(before.pStands)
  })

  it('refuses a table of other days', () => {
    expect(() => rejudge(before, rowsOf(whole, 149, 159), ask)).toThrow(/SHAPES_DIFFER/)
  })
})
