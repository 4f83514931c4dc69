import { describe, expect, it } from 'vitest'
import { normalDeviates, seededRandom } from '../stats/seededRandom.ts'
import { expectedLetThrough, letStandAtFor } from './expectedLetThrough.ts'

const seven = [0.999, 0.4, 0.98, 0.97, 0.995, 0.02, 0.9]

describe('expectedLetThrough', () => {
  it('sums what is missing to certainty, by hand: 0.001 + 0.005 + 0.02 at 0.98, the reading on the threshold among them', () => {
    const through = expectedLetThrough(seven, 0.98)
    expect(through).toMatchObject({ letStand: 3, leftToPerson: 4, lowWrong: 0, highWrong: 0 })
    expect(through.expectedWrong).toBeCloseTo(0.026, 12)
    expect(through.varianceWrong).toBeCloseTo(0.001 * 0.999 + 0.005 * 0.995 + 0.02 * 0.98, 12)
  })

  it('the number of wrong readings really falls within P10 and P90 as often as it should, in 2000 seeded trials', () => {
    const random = seededRandom(77)
    const pStands = Float64Array.from({ length: 300 }, () => 1 - 0.1 * random() ** 2)
    const { letStand, expectedWrong, lowWrong, highWrong } = expectedLetThrough(pStands, 0.93)
    let below = 0
    let above = 0
    let sum = 0
    for (let trial = 0; trial < 2000; trial++) {
      let wrong = 0
      for (const p of pStands) if (p >= 0.93 && random() > p) wrong++
      sum += wrong
      if (wrong < lowWrong) below++
      if (wrong > highWrong) above++
    }
    expect(letStand).toBeGreaterThan(200)
    // Three standard errors of the mean of 2000 trials.
    expect(Math.abs(sum / 2000 - expectedWrong)).toBeLessThan(3 * Math.sqrt(expectedWrong / 2000))
    // A whole number cannot cut off exactly a tenth: P10 has less than that below it, P90 no more above.
    expect(below / 2000).toBeLessThan(0.12)
    expect(above / 2000).toBeLessThan(0.12)
    expect((below + above) / 2000).toBeGreaterThan(0.04)
  })

  it('goes over to the normal range without a jump where the exact one would take too long', () => {
    const many = new Float64Array(260_000).fill(0.999)
    const { lowWrong, highWrong, expectedWrong, varianceWrong } = expectedLetThrough(many, 0.9)
    expect(expectedWrong).toBeCloseTo(260, 6)
    // Binomial(260000, 0.001), P10 and P90 by scipy.stats.binom (SciPy 1.17.1): 239 and 281.
    expect(Math.abs(lowWrong - 239)).toBeLessThanOrEqual(1)
    expect(Math.abs(highWrong - 281)).toBeLessThanOrEqual(1)
    expect(varianceWrong).toBeCloseTo(259.74, 6)
  })

  it('refuses odds that are none', () => {
    expect(() => expectedLetThrough([0.9, Number.NaN], 0.98)).toThrow(/reading 1/)
    expect(() => expectedLetThrough([0.9], 0)).toThrow(/threshold/)
  })
})

describe('letStandAtFor', () => {
  it('finds the threshold that leaves least to a person, by hand', () => {
    expect(letStandAtFor(seven, 0.0261)).toBe(0.98)
    expect(letStandAtFor(seven, 0.0259)).toBe(0.995)
    expect(letStandAtFor(seven, 0.0009)).toBeNull()
    expect(letStandAtFor(seven, 100)).toBe(0.02)
  })

  it('lets equal odds stand together or not at all', () => {
    expect(letStandAtFor([0.99, 0.98, 0.98, 0.98], 0.055)).toBe(0.99)
    expect(letStandAtFor([0.99, 0.98, 0.98, 0.98], 0.0701)).toBe(0.98)
  })

  it('at the threshold found no more wrong ones are expected than wished, and at the next lower one more are', () => {
    const random = seededRandom(5)
    const deviate = normalDeviates(random)
    const pStands = Float64Array.from({ length: 500 }, () => 1 / (1 + Math.exp(-3 - 2 * deviate())))
    for (const wished of [0.05, 0.4, 3, 11]) {
      const found = letStandAtFor(pStands, wished)!
      const lower = Math.max(...pStands.filter((p) => p < found))
      expect(expectedLetThrough(pStands, found).expectedWrong).toBeLessThanOrEqual(wished)
      expect(expectedLetThrough(pStands, lower).expectedWrong).toBeGreaterThan(wished)
    }
  })
})
