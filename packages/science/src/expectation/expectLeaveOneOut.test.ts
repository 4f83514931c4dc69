import { describe, expect, it } from 'vitest'
import { firstDay, rainyNetwork, rowsOf } from '../../test/support/rainyNetwork.ts'
import { ScienceError } from '../error.ts'
import { judge } from '../mistakes/judge.ts'
import { learnModel } from '../model/learnModel.ts'
import { believingModel, evenLevels } from './expectations.ts'
import { expectLeaveOneOut } from './expectLeaveOneOut.ts'
import { amountQuantile, dryChance, predictiveAt } from './predictive.ts'

const { gauges, table } = rainyNetwork(11, 20, 40)
const model = believingModel(learnModel(gauges, table))
const days = rowsOf(table, 30, 40)
const ask = { fromDay: firstDay + 30, toDay: firstDay + 39, sameMorning: false }
const judgement = judge(gauges, days, model, ask)

describe('expectLeaveOneOut', () => {
  it('gives for every gauge and day what its predictive distribution says', () => {
    const levels = Float64Array.of(0.02, 0.3, 0.5, 0.81, 0.995)
    const got = expectLeaveOneOut(judgement, { ...ask, levels })
    expect([got.placeCount, got.firstDay, got.dayCount]).toEqual([20, firstDay + 30, 10])
    for (const [row, gauge] of [
      [0, 3],
      [4, 19],
      [9, 0],
    ] as const) {
      const p = predictiveAt(judgement.latent, row, gauge)
      const i = row * 20 + gauge
      expect(got.dryChance[i]).toBe(dryChance(p))
      levels.forEach((level, k) => {
        expect(got.quantilesMm[i * 5 + k]).toBeCloseTo(amountQuantile(p, level), 5)
      })
      expect(got.neighbourCount[i]).toBe(19)
    }
  })

  it('goes wet and dry with the day', () => {
    const got = expectLeaveOneOut(judgement, { ...ask, levels: evenLevels(9) })
    let agree = 0
    for (let i = 0; i < got.dryChance.length; i++) if (got.dryChance[i]! > 0.5 === days.amountMm[i]! <= 0.05) agree++
    expect(agree / got.dryChance.length).toBeGreaterThan(0.8)
    const meanOf = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length
    expect(meanOf(got.meanMm) / meanOf(days.amountMm)).toBeGreaterThan(0.7)
    expect(meanOf(got.meanMm) / meanOf(days.amountMm)).toBeLessThan(1.4)
  })

  it('leaves out days outside the table, and gives nothing where none is left', () => {
    const levels = evenLevels(3)
    const part = expectLeaveOneOut(judgement, { fromDay: firstDay + 38, toDay: firstDay + 99, levels })
    expect([part.firstDay, part.dayCount, part.quantilesMm.length]).toEqual([firstDay + 38, 2, 2 * 20 * 3])
    expect(part.dryChance[21]).toBe(expectLeaveOneOut(judgement, { ...ask, levels }).dryChance[9 * 20 + 1])
    expect(expectLeaveOneOut(judgement, { fromDay: 1, toDay: 9, levels }).dayCount).toBe(0)
  })

  it('refuses levels that do not ascend between 0 and 1', () => {
    for (const levels of [[0.5, 0.4], [0, 0.5], [1], [Number.NaN]])
      expect(() => expectLeaveOneOut(judgement, { ...ask, levels: Float64Array.from(levels) })).toThrow(ScienceError)
  })
})

describe('evenLevels', () => {
  it('are (k - 0.5) / count', () => {
    expect([...evenLevels(4)]).toEqual([0.125, 0.375, 0.625, 0.875])
  })
})

describe('believingModel', () => {
  it('doubts few reports, and never more than the model did', () => {
    expect(believingModel({ ...model, mistakeRate: 0.04 }).mistakeRate).toBeLessThan(0.01)
    expect(believingModel({ ...model, mistakeRate: 0.001 }).mistakeRate).toBe(0.001)
  })
})
