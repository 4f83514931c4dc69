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
  const levels = Float64Array.of(0.0005, 0.1, 0.35, 0.5, 0.97, 0.9995)

  it('are those of mixtureScore for any factor, to a millionth', () => {
    const scores = new MixtureScores(levels)
    for (let factor = 0.6; factor < 6; factor *= 1.013) {
      const got = scores.standardFor(0.22, factor)
      levels.forEach((level, k) => {
        const miss = Math.abs(got[k]! - mixtureScore(level, 0.22, factor))
        expect(miss, `factor ${factor}, level ${level}`).toBeLessThan(1e-6)
      })
    }
  })

  it('follow a change of the wide share, there and back', () => {
    const scores = new MixtureScores(levels)
    const first = [...scores.standardFor(0.1, 2)]
    const wider = [...scores.standardFor(0.3, 2)]
    expect(wider[5]).toBeGreaterThan(first[5]!)
    expect([...scores.standardFor(0.1, 2)]).toEqual(first)
  })
})
