import { describe, expect, it } from 'vitest'
import { seededRandom } from '../stats/seededRandom.ts'
import { forecastWrong } from './forecastWrong.ts'

/** Wet and dry weeks by turns of chance, days alike within each. */
function weatherOf(random: () => number, mornings: number): { expected: number[]; variance: number[] } {
  const expected: number[] = []
  for (let level = 0; expected.length < mornings; ) {
    if (expected.length % 7 === 0) level = random() < 0.35 ? 0.3 : 0.02
    expected.push(level * (0.6 + 0.8 * random()))
  }
  return { expected, variance: expected.map((wrong) => 0.97 * wrong) }
}

describe('forecastWrong', () => {
  it('scales what is expected by the mornings ahead', () => {
    const { expected } = forecastWrong([0.1, 0.3, 0.2], [0.1, 0.3, 0.2], 30)
    expect(expected).toBeCloseTo(6, 12)
  })

  it('mornings that are all alike scatter by their odds alone: 365 x 0.02 is Poisson with mean 7.3, 4 to 11', () => {
    // scipy.stats.poisson(7.3).ppf([0.1, 0.9]) (SciPy 1.17.1): 4 and 11.
    const alike = new Float64Array(365).fill(0.02)
    expect(forecastWrong(alike, alike, 365)).toMatchObject({ low: 4, high: 11 })
  })

  it('holds eight in ten of the numbers that really come, in seeded weather, and is not far too wide', () => {
    const random = seededRandom(31)
    let within = 0
    const trials = 1500
    for (let trial = 0; trial < trials; trial++) {
      const was = weatherOf(random, 182)
      const { low, high } = forecastWrong(was.expected, was.variance, 91)
      let wrong = 0
      for (const mean of weatherOf(random, 91).expected) {
        // A Poisson number by the product of uniforms (Knuth).
        const floor = Math.exp(-mean)
        for (let product = random(); product > floor; product *= random()) wrong++
      }
      if (wrong >= low && wrong <= high) within++
    }
    expect(within / trials).toBeGreaterThan(0.78)
    expect(within / trials).toBeLessThan(0.92)
  })

  it('refuses shapes that differ, and no morning at all', () => {
    expect(() => forecastWrong([1, 2], [1], 30)).toThrow(/SHAPES_DIFFER/)
    expect(() => forecastWrong([], [], 30)).toThrow(/TOO_FEW_POINTS/)
  })
})
