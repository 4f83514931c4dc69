import { describe, expect, it } from 'vitest'
import { mistakes } from '../mistakes/mistake.ts'
import { mistakeShare } from '../mistakes/rates.ts'
import { type DecidedCounts, learnRatesFromDecisions } from './learnRatesFromDecisions.ts'

function countsOf(rows: readonly (readonly [number, number, number])[], named: DecidedCounts['named'] = {}) {
  return {
    mistaken: Float64Array.from(rows, (row) => row[0]),
    standing: Float64Array.from(rows, (row) => row[1]),
    passed: Float64Array.from(rows, (row) => row[2]),
    named,
  }
}

/** Eight gauges of some months; the fourth makes many mistakes, the sixth is often doubted in vain. */
const rows = [
  [1, 0, 240],
  [0, 1, 251],
  [2, 0, 239],
  [14, 1, 228],
  [1, 1, 247],
  [1, 12, 233],
  [0, 0, 118],
  [3, 1, 244],
] as const

describe('learnRatesFromDecisions', () => {
  it('leaves every gauge and every share as they were where nobody has decided', () => {
    const { factor, share, variation } = learnRatesFromDecisions(
      countsOf([
        [0, 0, 100],
        [0, 0, 300],
      ]),
      [1.7, 0.6],
    )
    expect([...factor]).toEqual([1.7, 0.6])
    expect(share).toBe(mistakeShare)
    expect(variation).toBeNull()
  })

  it('readings found mistaken raise their own gauge; readings found right lower theirs', () => {
    const { factor } = learnRatesFromDecisions(countsOf(rows))
    expect(factor[3]!).toBeGreaterThan(2)
    expect(Math.max(...factor)).toBe(factor[3])
    expect(factor[5]!).toBeLessThan(0.5)
    expect(Math.min(...factor)).toBe(factor[5])
  })

  it('each further reading found right lowers a gauge, each found mistaken raises it', () => {
    let before = Number.POSITIVE_INFINITY
    for (const standing of [3, 5, 7, 9]) {
      const changed = rows.map((row, g) => (g === 2 ? ([2, standing, 239] as const) : row))
      const factor = learnRatesFromDecisions(countsOf(changed)).factor[2]!
      expect(factor).toBeLessThan(before)
      before = factor
    }
    before = 0
    for (const mistaken of [0, 1, 3, 6]) {
      const changed = rows.map((row, g) => (g === 1 ? ([mistaken, 1, 251] as const) : row))
      const factor = learnRatesFromDecisions(countsOf(changed)).factor[1]!
      expect(factor).toBeGreaterThan(before)
      before = factor
    }
  })

  it('a gauge with few readings stays nearer to what was believed than one with many', () => {
    const few = learnRatesFromDecisions(countsOf([...rows, [0, 0, 12]])).factor.at(-1)!
    const many = learnRatesFromDecisions(countsOf([...rows, [0, 0, 900]])).factor.at(-1)!
    expect(few).toBeGreaterThan(0.85)
    expect(few).toBeLessThan(1)
    expect(many).toBeLessThan(0.4)
  })

  it('a gauge that was doubted in vain more than others does not make its neighbours suspect', () => {
    const quiet = rows.map(() => [0, 0, 200] as const)
    const { factor } = learnRatesFromDecisions(
      countsOf(quiet.map((row, g) => (g === 2 ? ([0, 25, 175] as const) : row))),
    )
    factor.forEach((value, g) => {
      if (g === 2) expect(value).toBeLessThan(0.5)
      else expect(value).toBe(1)
    })
  })

  it('the order of the gauges does not matter', () => {
    const order = [5, 2, 7, 0, 6, 3, 1, 4]
    const straight = learnRatesFromDecisions(countsOf(rows), [1, 1.4, 1, 0.8, 1, 1, 1.2, 1])
    const shuffled = learnRatesFromDecisions(
      countsOf(order.map((g) => rows[g]!)),
      order.map((g) => [1, 1.4, 1, 0.8, 1, 1, 1.2, 1][g]!),
    )
    order.forEach((g, k) => {
      expect(shuffled.factor[k]!).toBeCloseTo(straight.factor[g]!, 4)
    })
  })

  it('with insurance claims for mistakes, gives the shrunk factors of Efron & Hastie 2016, table 6.1', () => {
    // 9461 customers outweigh what is believed before; printed: 0.164 for none, 0.633 for two, 1.10 for four; mean 0.214.
    const claims = [7840, 1317, 239, 42, 14, 4, 4, 1].flatMap((people, count) => new Array<number>(people).fill(count))
    const { factor } = learnRatesFromDecisions(countsOf(claims.map((count) => [count, 0, 1 - count] as const)))
    const factorOf = (count: number) => factor[claims.indexOf(count)]!
    expect(factorOf(0) * 0.2144).toBeCloseTo(0.164, 2)
    expect(factorOf(2) * 0.2144).toBeCloseTo(0.633, 2)
    expect(factorOf(0)).toBeCloseTo(0.164 / 0.2144, 2)
    expect(factorOf(1) / factorOf(0)).toBeCloseTo(0.398 / 0.164, 1)
    expect(factorOf(4)).toBe(4) // 5.1, held back
  })

  it('one observer alone may not move a gauge by more than four times', () => {
    const { factor } = learnRatesFromDecisions(countsOf([[60, 0, 40], ...rows.map(() => [1, 0, 900] as const)]))
    expect(factor[0]).toBe(4)
  })
})

describe('the shares of the mistakes', () => {
  const named = { decimal: 4, 'false-zero': 2, unit: 40 }
  const { share } = learnRatesFromDecisions(countsOf(rows, named))

  it('sum to 1 and lean toward what was found, none by more than a factor of two', () => {
    expect(mistakes.reduce((sum, kind) => sum + share[kind], 0)).toBeCloseTo(1, 12)
    expect(share.unit / mistakeShare.unit).toBeCloseTo(2, 9)
    const only = learnRatesFromDecisions(countsOf(rows, { repeated: 5000 })).share
    for (const kind of mistakes) {
      if (kind !== 'unit') expect(share[kind]).toBeLessThan(mistakeShare[kind])
      expect(share[kind] / mistakeShare[kind]).toBeGreaterThan(0.5)
      expect(only[kind] / mistakeShare[kind]).toBeLessThanOrEqual(2 + 1e-9)
    }
  })

  it('are the posterior mean of a Dirichlet prior worth 60 mistakes, where no limit is met', () => {
    const few = learnRatesFromDecisions(countsOf(rows, { decimal: 5, unit: 1 })).share
    expect(few.decimal).toBeCloseTo((5 + 60 * mistakeShare.decimal) / 66, 12)
    expect(few.unit).toBeCloseTo((1 + 60 * mistakeShare.unit) / 66, 12)
    expect(few.wetted).toBeCloseTo((60 * mistakeShare.wetted) / 66, 12)
  })
})
