import { deserialize, serialize } from 'node:v8'
import { describe, expect, it } from 'vitest'
import { changed, rainyNetwork, rowsOf } from '../../test/support/rainyNetwork.ts'
import { amountMass, amountQuantile, predictiveAt } from '../expectation/predictive.ts'
import { judge } from '../mistakes/judge.ts'
import { seededRandom } from '../stats/seededRandom.ts'
import { learnModel } from './learnModel.ts'
import type { Model } from './model.ts'

const n = 24
const { gauges, table } = rainyNetwork(67, n, 200)
const history = rowsOf(table, 0, 170)
const later = rowsOf(table, 170, 200)
const all = { fromDay: 0, toDay: 99_999, sameMorning: false }
const model = learnModel(gauges, history)
const withoutHistory = learnModel(gauges, rowsOf(table, 0, 0))

/** Mean ln chance of each later reading's rounding cell, from all other gauges. */
function meanLogChance(by: Model): number {
  const { latent } = judge(gauges, later, by, all)
  let sum = 0
  for (let i = 0; i < later.amountMm.length; i++) {
    const p = predictiveAt(latent, Math.floor(i / n), i % n)
    const mm = later.amountMm[i]!
    sum += Math.log(mm === 0 ? amountMass(p, -1, 0) : amountMass(p, mm - 0.05, mm + 0.05))
  }
  return sum / later.amountMm.length
}

/** Mean odds of standing of one gauge's reports. */
function meanStands(by: Model, given: typeof table, gauge: number): number {
  const { pStands, gauge: judged } = judge(gauges, given, by, all)
  const own = pStands.filter((_, c) => judged[c] === gauge)
  return own.reduce((sum, p) => sum + p, 0) / own.length
}

describe('learnModel', () => {
  it('is plain data: the same after a structured clone, and after storage as text', () => {
    expect(structuredClone(model)).toEqual(model)
    const stored = deserialize(Buffer.from(serialize(model).toString('base64'), 'base64')) as Model
    expect(stored).toEqual(model)
    expect(judge(gauges, later, stored, all).pStands).toEqual(judge(gauges, later, model, all).pStands)
  })

  it('learns the same from the same history, and leaves the history as it was', () => {
    const copy = structuredClone(history)
    expect(learnModel(gauges, history)).toEqual(model)
    expect(history).toEqual(copy)
  })

  it('works for any number of gauges and days: one gauge, two days, none', () => {
    for (const [gaugeCount, dayCount] of [
      [1, 0],
      [1, 200],
      [2, 2],
      [3, 70],
      [5, 31],
    ] as const) {
      const small = rainyNetwork(9, gaugeCount, Math.max(1, dayCount))
      const learned = learnModel(small.gauges, rowsOf(small.table, 0, dayCount))
      const judgement = judge(small.gauges, small.table, learned, all)
      expect(judgement.count).toBe(gaugeCount * Math.max(1, dayCount))
      for (const p of judgement.pStands) expect(p >= 0 && p <= 1).toBe(true)
    }
  })

  it('sharpens with history: later readings are likelier by a model that learned than by one that did not', () => {
    expect(meanLogChance(model)).toBeGreaterThan(meanLogChance(withoutHistory) + 0.02)
  })

  it('is calibrated on later days: of wet days, the central 80 % hold about 80 %', () => {
    const { latent } = judge(gauges, later, model, all)
    let inside = 0
    let count = 0
    for (let i = 0; i < later.amountMm.length; i++) {
      const p = predictiveAt(latent, Math.floor(i / n), i % n)
      if (amountQuantile(p, 0.1) === 0) continue
      count++
      const mm = later.amountMm[i]!
      if (mm >= amountQuantile(p, 0.1) && mm <= amountQuantile(p, 0.9)) inside++
    }
    expect(count).toBeGreaterThan(100)
    expect(inside / count).toBeGreaterThan(0.7)
    expect(inside / count).toBeLessThan(0.92)
  })

  it('hardly moves for a few mistakes in the history', () => {
    const random = seededRandom(3)
    const flawed = changed(history, (mm) => (random() < 0.015 ? (mm === 0 ? 30 * random() : 10 * mm) : mm))
    const learned = meanLogChance(learnModel(gauges, flawed))
    expect(learned).toBeGreaterThan(meanLogChance(withoutHistory))
    expect(Math.abs(learned - meanLogChance(model))).toBeLessThan(0.25)
  })

  it('expects more mistakes in a network that made more, never none and never mostly mistakes', () => {
    const random = seededRandom(5)
    const careless = changed(history, (mm) => (mm > 1 && random() < 0.15 ? 10 * mm : mm))
    const { mistakeRate } = learnModel(gauges, careless)
    expect(mistakeRate).toBeGreaterThan(model.mistakeRate)
    expect(mistakeRate).toBeLessThan(0.5)
    expect(model.mistakeRate).toBeGreaterThan(0)
  })

  it('expects more mistakes of a gauge that made more', () => {
    const random = seededRandom(8)
    const careless = changed(history, (mm, g) => (g === 13 && random() < 0.12 ? (mm === 0 ? 12.5 : 0) : mm))
    const { mistakeFactor } = learnModel(gauges, careless)
    mistakeFactor.forEach((factor, g) => {
      if (g !== 13) expect(factor).toBeLessThan(mistakeFactor[13]!)
    })
    expect(mistakeFactor[13]!).toBeGreaterThan(1.3)
  })

  it('takes a gauge that always dates its rain a day late as its habit, not as a mistake every wet day', () => {
    const dated = (given: typeof table) =>
      changed(given, (mm, g, day) => {
        const row = day - given.firstDay
        return g === 7 && row > 0 ? given.amountMm[(row - 1) * n + g]! : mm
      })
    const learned = learnModel(gauges, dated(history))
    expect(meanStands(learned, dated(later), 7)).toBeGreaterThan(0.9)
    expect(meanStands(learned, dated(later), 7)).toBeGreaterThan(meanStands(model, dated(later), 7) + 0.1)
  })

  it('learns that most slips are a habit where a gauge dates every fourth week a day late', () => {
    const inTurns = changed(history, (mm, g, day) => {
      const row = day - history.firstDay
      return g === 7 && row > 0 && row % 20 < 5 ? history.amountMm[(row - 1) * n + g]! : mm
    })
    const { slipShare } = learnModel(gauges, inTurns)
    slipShare.forEach((share, g) => {
      if (g !== 7) expect(share).toBeGreaterThan(slipShare[7]!)
    })
    expect(slipShare[7]!).toBeLessThan(0.5)
  })
})
