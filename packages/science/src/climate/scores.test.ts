import { describe, expect, it } from 'vitest'
import { rainyNetwork } from '../../test/support/rainyNetwork.ts'
import { normalCdf } from '../stats/normalCdf.ts'
import { monthOfEpochDay } from './climate.ts'
import { learnClimate } from './learnClimate.ts'
import { amountOfScore, scoreOfAmount, scoreScale } from './scores.ts'

const { gauges, table } = rainyNetwork(17, 25, 300)
const climate = learnClimate(gauges, table)
const scales = [
  [0, 4],
  [7, 0],
  [24, 10],
].map(([gauge, month]) => ({
  scale: scoreScale(climate, gauge!, month!),
  dryShare: climate.dryShare[gauge! * 12 + month!]!,
}))

describe('scores', () => {
  it('a dry day lies below the score that has the chance of a dry day under it', () => {
    for (const { scale, dryShare } of scales) {
      expect(normalCdf(scale.dryThreshold)).toBeCloseTo(dryShare, 12)
      for (const amountMm of [0, scale.dryBelowMm / 2, scale.dryBelowMm])
        expect(scoreOfAmount(scale, amountMm)).toBe(scale.dryThreshold)
      for (const below of [0, 1e-9, 0.7]) expect(amountOfScore(scale, scale.dryThreshold - below)).toBe(0)
    }
  })

  it('the smallest amount that a gauge resolves begins just above its dry threshold, without a jump', () => {
    for (const { scale } of scales) {
      const least = scoreOfAmount(scale, scale.dryBelowMm * (1 + 1e-9))
      expect(least).toBeGreaterThanOrEqual(scale.dryThreshold - 1e-9)
      expect(least - scale.dryThreshold).toBeLessThan(1e-6)
    }
  })

  it('amount to score and back is the same amount, from a drizzle to five hundred millimetres', () => {
    for (const { scale } of scales)
      for (const amountMm of [0.07, 0.1, 0.33, 1, 2.54, 7.7, 19.1, 60, 140, 333, 500])
        expect(amountOfScore(scale, scoreOfAmount(scale, amountMm)) / amountMm).toBeCloseTo(1, 9)
  })

  it('more rain is always a higher score, far out in the tail too', () => {
    for (const { scale } of scales) {
      let before = scale.dryThreshold
      for (let amountMm = scale.dryBelowMm * 1.01; amountMm < 900; amountMm *= 1.01) {
        const score = scoreOfAmount(scale, amountMm)
        expect(score).toBeGreaterThan(before)
        before = score
      }
      expect(before).toBeLessThan(12)
    }
  })

  it('a gauge that catches and resolves twice as much gives twice an amount the same score', () => {
    const twice = {
      ...climate,
      resolutionMm: climate.resolutionMm.map((mm) => 2 * mm),
      scaleMm: climate.scaleMm.map((mm) => 2 * mm),
    }
    for (const amountMm of [0.3, 2.2, 17, 80])
      expect(scoreOfAmount(scoreScale(twice, 3, 6), 2 * amountMm)).toBeCloseTo(
        scoreOfAmount(scoreScale(climate, 3, 6), amountMm),
        12,
      )
  })

  it('make the history nearly standard normal: each share of reports above a score is about the normal share', () => {
    for (const score of [0.7, 1, 1.5, 2]) {
      let above = 0
      for (let i = 0; i < table.amountMm.length; i++) {
        const scale = scoreScale(climate, i % 25, monthOfEpochDay(table.firstDay + Math.floor(i / 25)))
        if (scoreOfAmount(scale, table.amountMm[i]!) > score) above++
      }
      const share = above / table.amountMm.length
      expect(share / normalCdf(-score)).toBeGreaterThan(0.8)
      expect(share / normalCdf(-score)).toBeLessThan(1.25)
    }
  })
})
