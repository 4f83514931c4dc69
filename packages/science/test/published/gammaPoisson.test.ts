import { describe, expect, it } from 'vitest'
import { fitGammaPoisson, gammaPoissonFactor, logNegativeBinomial } from '../../src/stats/gammaPoisson.ts'

/** Counts of a table "so many places with 0, 1, 2, … events", place by place. */
function placesOf(table: readonly number[]): number[] {
  return table.flatMap((places, events) => new Array<number>(places).fill(events))
}
const ones = (n: number): number[] => new Array<number>(n).fill(1)

describe('Efron & Hastie 2016, Computer Age Statistical Inference, table 6.1: claims of 9461 car insurances', () => {
  const counts = placesOf([7840, 1317, 239, 42, 14, 4, 4, 1])

  it('the gamma prior fitted by marginal likelihood has shape 0.70 and scale 0.306', () => {
    const fit = fitGammaPoisson(counts, ones(counts.length), null)
    expect(fit?.shape).toBeCloseTo(0.7015, 3) // recomputed with scipy's nbinom: 0.70151, mean 0.214354
    expect((fit?.rate ?? 0) / (fit?.shape ?? 1)).toBeCloseTo(0.306, 3)
  })

  it('what is expected of a customer with 0…6 claims: 0.164, 0.398, 0.633, 0.87, 1.10, 1.34, 1.57', () => {
    const fit = fitGammaPoisson(counts, ones(counts.length), null)
    const expected = [0, 1, 2, 3, 4, 5, 6].map(
      (claims) => (fit?.rate ?? 0) * gammaPoissonFactor(claims, fit?.rate ?? 0, fit?.shape ?? 0),
    )
    const printed = [0.164, 0.398, 0.633, 0.87, 1.1, 1.34, 1.57]
    expected.forEach((value, claims) => {
      expect(Math.abs(value - printed[claims]!)).toBeLessThan(claims < 3 ? 0.001 : 0.006)
    })
  })
})

it('Bliss & Fisher 1953, European red mites on 150 apple leaves: mean 1.1467, k = 1.0246 by maximum likelihood', () => {
  const counts = placesOf([70, 38, 17, 10, 9, 3, 2, 1])
  const fit = fitGammaPoisson(counts, ones(150), null)
  expect(fit?.rate).toBeCloseTo(1.1467, 4)
  expect(fit?.shape).toBeCloseTo(1.0246, 4)
})

it('unequal exposures: rate and shape as scipy.stats.nbinom and scipy.optimize find them (1.17.1)', () => {
  const fit = fitGammaPoisson([3, 0, 11, 1, 4, 0, 2, 7], [400, 350, 800, 90, 500, 700, 310, 620], null)
  expect(fit?.shape).toBeCloseTo(1.99254, 3)
  expect(fit?.rate).toBeCloseTo(0.00715168, 6)
})

it('the chances of all counts sum to 1, with the mean asked for; a large shape is Poisson', () => {
  let sum = 0
  let mean = 0
  for (let count = 0; count < 400; count++) {
    const chance = Math.exp(logNegativeBinomial(count, 3.7, 0.6))
    sum += chance
    mean += count * chance
  }
  expect(sum).toBeCloseTo(1, 9)
  expect(mean).toBeCloseTo(3.7, 8)
  expect(Math.exp(logNegativeBinomial(2, 3.7, 1e9))).toBeCloseTo((Math.exp(-3.7) * 3.7 ** 2) / 2, 6)
})

it('nothing counted tells nothing', () => {
  expect(fitGammaPoisson([0, 0], [10, 20], null)).toBeNull()
})
