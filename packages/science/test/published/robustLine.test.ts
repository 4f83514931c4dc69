/**
 * Huber's line against R: telephone calls in Belgium, 1950 to 1973, six years of which were counted in minutes
 * [Venables2002]. The book prints -102.62 + 2.041 year, scale 9.03, with the rounds cut at R's usual accuracy; run to the end,
 * `rlm(calls ~ year, phones, maxit = 200, acc = 1e-12)` of MASS 7.3 gives the numbers below.
 */
import { expect, it } from 'vitest'
import { robustLine } from '../../src/urgent/robustLine.ts'

const years = Array.from({ length: 24 }, (_, index) => 50 + index)
const calls = [
  4.4, 4.7, 4.7, 5.9, 6.6, 7.3, 8.1, 8.8, 10.6, 12, 13.5, 14.9, 16.1, 21.2, 119, 124, 142, 159, 182, 212, 43, 24, 27,
  29,
]

it('robustLine on the calls in Belgium: -102.529638 + 2.039600 year, scale 9.009028', () => {
  const line = robustLine(years, [calls])
  expect(line.slope[0]).toBeCloseTo(2.039600466, 7)
  expect(line.start[0]).toBeCloseTo(-102.529638119, 6)
  // MASS takes the scale before the last round.
  expect(line.scale).toBeCloseTo(9.009028306, 5)
})

it('least squares on the same is 5.041 year - 260.059: the weights are what bends it back', () => {
  const line = robustLine(years, [calls], 1e9)
  expect(line.slope[0]).toBeCloseTo(5.041, 3)
  expect(line.start[0]).toBeCloseTo(-260.059, 3)
})
