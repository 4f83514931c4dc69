import { describe, expect, it } from 'vitest'
import { normalCdf } from '../stats/normalCdf.ts'
import { normalQuantile } from '../stats/normalQuantile.ts'
import { MixtureScores, mixtureScore } from './mixtureScores.ts'

describe('mixtureScore', () => {
  it('has the level below it, in the middle and far out in both tails', () => {
    for (const [wideShare, wideFactor] of [
      [0.06, 2.2],
      [0.3, 1.8],
      [0.01, 6],
      [0.5, 0.7],
    ] as const) {
      for (const level of [1e-9, 0.003, 0.2, 0.4999, 0.5, 0.71, 0.995, 1 - 1e-9]) {
        const u = mixtureScore(level, wideShare, wideFactor)
        const below = (1 - wideShare) * normalCdf(u) + wideShare * normalCdf(u / wideFactor)
        expect(Math.abs(below / level - 1), `${wideShare} ${wideFactor} ${level}`).toBeLessThan(1e-9)
      }
    }
  })

  it('is the normal quantile where there is no wide part', () => {
    for (const level of [0.004, 0.3, 0.5, 0.83])
      expect(mixtureScore(level, 0, 3)).toBeCloseTo(normalQuantile(level), 11)
  })
})

describe('MixtureScores', () => {
  it('finds new scores when the shape changes, and changes back', () => {
    const scores = new MixtureScores(Float64Array.of(0.1, 0.35, 0.97))
    const first = [...scores.standardFor(0.1, 2)]
    const wider = [...scores.standardFor(0.1, 3)]
    expect(wider[2]).toBeGreaterThan(first[2]!)
    expect([...scores.standardFor(0.1, 2)]).toEqual(first)
    expect(first).toEqual([0.1, 0.35, 0.97].map((level) => mixtureScore(level, 0.1, 2)))
  })
})
