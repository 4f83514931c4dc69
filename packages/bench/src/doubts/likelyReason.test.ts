import { emptyDailyTable } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { nearestGauges } from '../baselines/nearestGauges.ts'
import { likelyReason } from './likelyReason.ts'
import { surroundingsOf } from './surroundings.ts'

const day = 505

/**
 * Four gauges in a row, the first judged on day 505. Days 500 to 509, a line for each gauge; NaN for no reading.
 * The invented amounts around are those of day 504, 505 and 506; other days are dry.
 */
function around(own: number[], [before, on, after]: [number[], number[], number[]]) {
  const table = emptyDailyTable(4, 500, 10)
  table.amountMm.fill(0)
  own.forEach((amountMm, row) => {
    table.amountMm[row * 4] = amountMm
  })
  for (const [row, amounts] of [before, on, after].entries())
    amounts.forEach((amountMm, place) => {
      table.amountMm[(row + 4) * 4 + place + 1] = amountMm
    })
  const gauges = {
    ids: ['a', 'b', 'c', 'd'],
    xM: Float64Array.of(0, 4000, 9000, 15_000),
    yM: new Float64Array(4),
    elevationM: new Float64Array(4),
  }
  return surroundingsOf({ gauge: 0, day, judged: table, clean: table, nearest: nearestGauges(gauges) })
}

const dry = [0, 0, 0]
const reasonOf = (own: number[], others: [number[], number[], number[]], stepMm = 0.1) =>
  likelyReason(around(own, others), stepMm)

describe('surroundingsOf', () => {
  it('tells the own days beside, the least, middle and most around, and how far the nearest gauge is', () => {
    const found = around([0, 0, 3, 0, Number.NaN, 7.5, 1.5, 0, 0, 0], [[1, 2, 9], [4, 11, 5], dry])
    expect(found).toMatchObject({
      reportedMm: 7.5,
      beforeMm: Number.NaN,
      afterMm: 1.5,
      emptyDaysBefore: 2,
      nearestKm: 4,
    })
    expect(found.around).toEqual({ leastMm: 4, medianMm: 5, mostMm: 11, dryCount: 0 })
    // Two empty days (0 and 2 mm in the middle around) and the day itself.
    expect(found.aroundOverRunMm).toBe(7)
  })

  it('leaves out gauges that did not report on the day', () => {
    expect(around([0, 0, 0, 0, 0, 2, 0, 0, 0, 0], [dry, [Number.NaN, 6, 8], dry]).around.medianMm).toBe(7)
  })
})

describe('likelyReason', () => {
  it('of a zero: long zeros, a single zero in rain, or rain that stands a day off', () => {
    expect(
      reasonOf(
        [0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
        [
          [20, 22, 18],
          [14, 12, 19],
          [2, 4, 3],
        ],
      ),
    ).toBe('long-zeros')
    expect(reasonOf([0, 0, 0, 0, 0, 0, 0, 0, 0, 0], [dry, [44, 32, 59], dry])).toBe('zero-in-rain')
    expect(reasonOf([4, 4, 4, 4, 13, 0, 0, 4, 4, 4], [[12, 15, 11], [24, 18, 31], dry])).toBe('zero-in-rain')
    expect(reasonOf([0, 0, 0, 0, 0, 0, 19, 0, 0, 0], [dry, [22, 15, 18], dry])).toBe('misdated')
    expect(reasonOf([1, 0, 0, 0, 0, 0, 0, 1, 0, 0], [dry, [0, 0, 9], dry])).toBe('within')
  })

  it('of an amount: a day off, a total, or the day before again', () => {
    expect(reasonOf([0, 0, 0, 0, 0, 38, 9, 0, 0, 0], [dry, [0.2, 0, 1], [41, 29, 47]])).toBe('misdated')
    expect(reasonOf([0, 0, 0, 0, 0, 33, 0, 0, 0, 0], [[20, 18, 25], [12, 14, 9], dry])).toBe('total')
    expect(reasonOf([0, 0, 0, 0, 28, 28, 0, 0, 0, 0], [[30, 26, 27], [2, 0, 4], dry])).toBe('repeated')
  })

  it('of an amount after silence: a total, where it is more than the day gave and no more than can have gathered', () => {
    const silent = Number.NaN
    expect(reasonOf([0, 0, 2, 0, silent, 31, 0, 0, 0, 0], [[29, 34, 25], [1, 0, 3], dry])).toBe('after-silence')
    expect(reasonOf([0, 0, 2, 0, silent, 31.2, 0, 0, 0, 0], [[29, 34, 25], [24, 18, 35], dry])).toBe('within')
    expect(reasonOf([0, 0, 2, 0, silent, 231.4, 0, 0, 0, 0], [[9, 4, 5], [1, 0, 3], dry])).toBe('above-all')
  })

  it('of an amount: ten times or a tenth of what fell around, unless its digits forbid it', () => {
    expect(reasonOf([0, 3, 0, 0, 2, 88, 0, 0, 0, 0], [[3, 1, 2], [9, 7, 12], dry])).toBe('slipped-point')
    expect(reasonOf([0, 3, 0, 0, 2, 88.4, 0, 0, 0, 0], [[3, 1, 2], [9, 7, 12], dry])).toBe('above-all')
    expect(reasonOf([0, 3, 0, 0, 2, 1.4, 0, 0, 0, 0], [[3, 1, 2], [15, 13, 19], dry])).toBe('slipped-point')
  })

  it('of an amount: alone in the dry, above all, below all, or within what fell around', () => {
    expect(reasonOf([1, 0, 0, 0, 1, 2.3, 0, 0, 0, 0], [dry, dry, dry])).toBe('dry-around')
    expect(reasonOf([1, 0, 0, 0, 1, 51.3, 0, 0, 0, 0], [dry, [0, 4, 0], dry])).toBe('above-all')
    expect(reasonOf([1, 0, 0, 0, 1, 4.2, 0, 0, 0, 0], [dry, [21, 15, 10], dry])).toBe('below-all')
    expect(reasonOf([1, 0, 0, 0, 1, 18.2, 0, 0, 0, 0], [dry, [21, 15, 40], dry])).toBe('within')
  })
})
