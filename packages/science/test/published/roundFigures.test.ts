/**
 * Round figures in observers' amounts. The constants of the tests of Daly et al. 2007 were not seen; held instead to
 * exact binomial limits and to geometric amounts, worked out apart from this code (scipy 1.17.1: binom.isf, geom).
 */
import { describe, expect, it } from 'vitest'
import { digitsFromSteps, unroundedDigits, unroundedShare } from '../../src/habits/gaugeDigits.ts'
import { binomialAtLeast, binomialLimit } from '../../src/stats/binomial.ts'
import { seededRandom } from '../../src/stats/seededRandom.ts'

describe('one-sided binomial limits for multiples of five, p = 0.2, at 5, 1 and 0.1 %', () => {
  it.each([
    [50, [16, 18, 20]],
    [100, [28, 31, 34]],
    [200, [50, 55, 59]],
    [500, [116, 122, 129]],
  ])('of %i readings', (readings, limits) => {
    expect([0.05, 0.01, 0.001].map((level) => binomialLimit(readings, 0.2, level))).toEqual(limits)
  })

  it('for multiples of ten, p = 0.1, at 1 %: 11 of 50, 19 of 100, 31 of 200, 67 of 500', () => {
    expect([50, 100, 200, 500].map((readings) => binomialLimit(readings, 0.1, 0.01))).toEqual([11, 19, 31, 67])
  })
})

it('binomialAtLeast agrees with scipy in both tails', () => {
  expect(binomialAtLeast(31, 100, 0.2)).toBeCloseTo(0.0060593, 7)
  expect(binomialAtLeast(900, 4000, 0.22)).toBeCloseTo(0.227869, 6)
  expect(binomialAtLeast(5, 100, 0.2)).toBeCloseTo(0.9999963, 7)
  expect(binomialAtLeast(0, 7, 0.3)).toBe(1)
  expect(binomialAtLeast(8, 7, 0.3)).toBe(0)
})

describe('amounts spread geometrically in hundredths of an inch, nobody rounding', () => {
  it('of amounts from 0.05 in, 21.2 % are multiples of 0.05 where all have a mean of 0.35 in, 22.1 % for 0.20 in', () => {
    // Geometric amounts from 1 on have no memory: those from 5 on have a mean 4 steps higher.
    expect(unroundedShare(5, 35 + 4)).toBeCloseTo(0.212, 3)
    expect(unroundedShare(5, 20 + 4)).toBeCloseTo(0.221, 3)
  })

  it('the shares of the last digits, from 13 steps on, are those of simulated geometric amounts', () => {
    const mean = 35
    const shares = unroundedDigits(mean + 12)
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
    const counts = new Array<number>(10).fill(0)
    const random = seededRandom(17)
    let from13 = 0
    for (let k = 0; k < 400_000; k++) {
      // Geometric on 1, 2, … by inversion.
      const steps = 1 + Math.floor(Math.log(1 - random()) / Math.log(1 - 1 / mean))
      if (steps < digitsFromSteps) continue
      from13++
      counts[steps % 10]! += 1
    }
    counts.forEach((count, digit) => {
      expect(Math.abs(count / from13 - shares[digit]!)).toBeLessThan(0.003)
    })
  })
})
