import { describe, expect, it } from 'vitest'
import { pointsAt } from '../../test/support/rainyNetwork.ts'
import { scoreOfAmount, scoreScale } from '../climate/scores.ts'
import { learnModel } from '../model/learnModel.ts'
import { emptyDailyTable } from '../network/dailyTable.ts'
import {
  amountMass,
  amountMoments,
  amountQuantile,
  dryChance,
  medianAbove,
  normalMass,
  predictiveOf,
  scoreCdf,
  scoreMass,
  scoreQuantile,
} from './predictive.ts'

const model = learnModel(pointsAt([0, 0]), emptyDailyTable(1, 20_000, 0))
const scale = scoreScale(model.climate, 0, 5)
const at = (mean: number, variance: number, surroundings = 1) =>
  predictiveOf(mean, variance, surroundings, scale, model.spread)
const cases = [at(-1.7, 0.1), at(0.2, 0.4), at(0.9, 0.08, 2), at(2.4, 0.2, 0.4), at(3.6, 0.9)]

/** A shower that no neighbour saw takes part in masses of amounts and in nothing else. */
const showers = 0.005

describe('predictive distribution', () => {
  it('all cells together, the dry one included, hold exactly one whole', () => {
    for (const p of cases) {
      let sum = amountMass(p, -1, 0)
      expect(Math.abs(sum - dryChance(p))).toBeLessThan(showers)
      for (let lowMm = scale.dryBelowMm; lowMm < 1e8; lowMm *= 1.3) sum += amountMass(p, lowMm, 1.3 * lowMm)
      expect(sum).toBeCloseTo(1, 6)
    }
  })

  it('the chance of a range is the sum of the chances of its parts', () => {
    for (const p of cases) {
      const parts = amountMass(p, -1, 2) + amountMass(p, 2, 5.5) + amountMass(p, 5.5, 31)
      expect(parts).toBeCloseTo(amountMass(p, -1, 31), 12)
    }
  })

  it('keeps its digits far out in both tails', () => {
    expect(normalMass(9, 10) / normalMass(-10, -9)).toBeCloseTo(1, 12)
    expect(normalMass(9, 10)).toBeGreaterThan(0)
    const p = at(0.9, 0.08)
    expect(scoreMass(p, p.mean + 8 * p.wideHigh, p.mean + 9 * p.wideHigh)).toBeGreaterThan(0)
  })

  it('quantiles are where the share below is the level, and 0 mm as far as the chance of dry reaches', () => {
    for (const p of cases) {
      for (const level of [0.001, 0.05, 0.31, 0.5, 0.77, 0.99, 0.9999]) {
        expect(scoreCdf(p, scoreQuantile(p, level))).toBeCloseTo(level, 6)
        const amountMm = amountQuantile(p, level)
        if (level <= dryChance(p)) expect(amountMm).toBe(0)
        else expect(Math.abs(amountMass(p, -1, amountMm) - level)).toBeLessThan(showers)
      }
    }
  })

  it('the median above an amount halves the chance of what lies above it', () => {
    for (const p of cases) {
      for (const lowMm of [0, 1.5, 12]) {
        const middle = medianAbove(p, lowMm)
        const above = (mm: number) => 1 - scoreCdf(p, scoreOfAmount(scale, mm))
        expect(above(middle)).toBeCloseTo(above(lowMm) / 2, 5)
      }
    }
  })

  it('more rain around means more rain expected and less chance of dry', () => {
    const rising = [-2.5, -1.4, -0.3, 0.5, 1.3, 2.2, 3.4].map((mean) => at(mean, 0.2))
    for (let k = 1; k < rising.length; k++) {
      expect(dryChance(rising[k]!)).toBeLessThan(dryChance(rising[k - 1]!))
      expect(amountQuantile(rising[k]!, 0.9)).toBeGreaterThanOrEqual(amountQuantile(rising[k - 1]!, 0.9))
    }
    expect(amountQuantile(rising[6]!, 0.1)).toBeGreaterThan(amountQuantile(rising[3]!, 0.9))
  })

  it('less is known where neighbours say less, and where the surroundings are more uneven than usual', () => {
    const width = (p: ReturnType<typeof at>) => scoreQuantile(p, 0.9) - scoreQuantile(p, 0.1)
    expect(width(at(0.8, 0.5))).toBeGreaterThan(width(at(0.8, 0.1)))
    expect(width(at(0.8, 0.2, 3))).toBeGreaterThan(width(at(0.8, 0.2, 0.5)))
  })

  it('moments are about those of many quantiles; nothing expected has no mean', () => {
    for (const p of cases.slice(1, 4)) {
      const count = 4000
      const narrow = { ...p, shareLow: 0, shareHigh: 0 }
      let sum = 0
      for (let k = 0; k < count; k++) sum += amountQuantile(narrow, (k + 0.5) / count)
      const moments = { mean: 0, variance: 0 }
      amountMoments(p, moments)
      expect(moments.mean / (sum / count)).toBeGreaterThan(0.9)
      expect(moments.mean / (sum / count)).toBeLessThan(1.05)
      expect(moments.variance).toBeGreaterThan(0)
    }
    const moments = { mean: 1, variance: 1 }
    amountMoments({ ...at(-3, 0.05), shareLow: 0, shareHigh: 0 }, moments)
    expect(moments).toEqual({ mean: 0, variance: 0 })
  })
})
