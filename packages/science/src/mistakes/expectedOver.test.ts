import { describe, expect, it } from 'vitest'
import { clean, isSurelyDry, lastDay, n, table } from '../../test/support/mistakenNetwork.ts'
import { amountQuantile, dryChance, predictiveAt } from '../expectation/predictive.ts'
import { addQuantiles, expectedOver } from './expectedOver.ts'

const predictive = (gauge: number, day: number) => predictiveAt(clean.latent, day - table.firstDay, gauge)

describe('expectedOver', () => {
  it('over one day is the expectation of that day', () => {
    for (const [gauge, day] of [
      [4, lastDay - 20],
      [11, lastDay - 33],
    ] as const) {
      const p = predictive(gauge, day)
      const got = expectedOver(clean, gauge, day, day)
      expect(got.lowMm).toBeCloseTo(amountQuantile(p, 0.1), 9)
      expect(got.midMm).toBeCloseTo(amountQuantile(p, 0.5), 9)
      expect(got.highMm).toBeCloseTo(amountQuantile(p, 0.9), 9)
      expect(got.dryChance).toBeCloseTo(dryChance(p), 9)
    }
  })

  it('over more days is never less than over some of them, and its chance of a dry day never greater', () => {
    for (let day = lastDay - 60; day < lastDay; day += 7) {
      const gauge = day % n
      const one = expectedOver(clean, gauge, day, day)
      const three = expectedOver(clean, gauge, day - 2, day)
      expect(three.lowMm).toBeGreaterThanOrEqual(one.lowMm)
      expect(three.midMm).toBeGreaterThanOrEqual(one.midMm)
      expect(three.highMm).toBeGreaterThanOrEqual(one.highMm)
      expect(three.dryChance).toBeLessThanOrEqual(one.dryChance)
    }
  })

  it('adds nothing for a day that is surely dry', () => {
    const rows = Array.from({ length: 100 }, (_, k) => k + 20)
    const row = rows.find((r) => isSurelyDry(7, r) && !isSurelyDry(7, r - 1))!
    const wet = expectedOver(clean, 7, table.firstDay + row - 1, table.firstDay + row - 1)
    const both = expectedOver(clean, 7, table.firstDay + row - 1, table.firstDay + row)
    expect(both.midMm).toBeCloseTo(wet.midMm, 1)
    expect(both.highMm).toBeCloseTo(wet.highMm, 0)
  })
})

it('addQuantiles of two even spreads is their triangle: quantiles of U(0, 1) + U(0, 1) from its closed form', () => {
  const even = Array.from({ length: 25 }, (_, k) => (k + 0.5) / 25)
  const sum = addQuantiles(even, even)
  // F(s) = s²/2 below 1, so that the 0.1 quantile is √0.2 and the 0.9 quantile 2 − √0.2.
  expect(sum[2]).toBeCloseTo(Math.sqrt(0.2), 1)
  expect(sum[12]).toBeCloseTo(1, 9)
  expect(sum[22]).toBeCloseTo(2 - Math.sqrt(0.2), 1)
})
