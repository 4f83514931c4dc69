import { describe, expect, it } from 'vitest'
import { type Climate, wetGrid } from '../climate/climate.ts'
import { amountOfScore, scoreScale } from '../climate/scores.ts'
import { normalCdf } from '../stats/normalCdf.ts'
import { meanAmountMm } from './meanAmount.ts'
import { amountQuantile, type Predictive, scoreCdf } from './predictive.ts'

const scaleMm = 3.5
const logSd = 1.2
const dryShare = 0.64
const resolutionMm = 0.2

/** Wet amounts lognormal: the score of amount / scale is its logarithm over its spread. */
function lognormalClimate(): Climate {
  const wetScore = new Float64Array(12 * wetGrid.count)
  for (let i = 0; i < wetScore.length; i++) wetScore[i] = (wetGrid.from + wetGrid.step * (i % wetGrid.count)) / logSd
  return {
    gaugeCount: 1,
    resolutionMm: Float64Array.of(resolutionMm),
    rounding: { writtenMm: 0.1, stepsMm: [0.1], share: Float64Array.of(1) },
    dryShare: new Float64Array(12).fill(dryShare),
    scaleMm: new Float64Array(12).fill(scaleMm),
    wetScore,
  }
}
const scale = scoreScale(lognormalClimate(), 0, 4)

/** Amount at the middle of strips 0.001 wide, times the chance of the strip. */
function fineArea(p: Predictive): number {
  let sum = 0
  let below = scoreCdf(p, p.scale.dryThreshold)
  for (let z = p.scale.dryThreshold; z < p.mean + 9 * Math.max(p.sdHigh, p.wideHigh); z += 0.001) {
    const above = scoreCdf(p, z + 0.001)
    sum += (above - below) * amountOfScore(p.scale, z + 0.0005)
    below = above
  }
  return sum
}

describe('meanAmountMm', () => {
  it('of the climate itself is the textbook mean of a lognormal above the first amount resolved, times the wet share', () => {
    const center = Math.log(scaleMm)
    const first = (Math.log(resolutionMm / 2) - center) / logSd
    const wetMean = (Math.exp(center + logSd ** 2 / 2) * normalCdf(logSd - first)) / normalCdf(-first)
    const climate: Predictive = {
      mean: 0,
      sdLow: 1,
      sdHigh: 1,
      wideLow: 1,
      wideHigh: 1,
      shareLow: 0,
      shareHigh: 0,
      scale,
    }
    expect(meanAmountMm(climate)).toBeCloseTo((1 - dryShare) * wetMean, 3)
  })

  it('is the area under amount × density cut fine, and nearly the mean of many even quantiles', () => {
    for (const [mean, sd, wideFactor, ofQuantiles] of [
      [-1.4, 0.5, 2, 0.02],
      [0.2, 0.35, 1.9, 0.004],
      [0.37, 0.9, 1.5, 0.004],
      [1.6, 0.25, 2.6, 0.004],
      [2.9, 0.2, 2, 0.004],
      [0.9, 0.4, 0.7, 0.004],
    ] as const) {
      const p: Predictive = {
        mean,
        sdLow: sd,
        sdHigh: sd * 1.15,
        wideLow: sd * wideFactor * 1.2,
        wideHigh: sd * wideFactor,
        shareLow: 0.23,
        shareHigh: 0.17,
        scale,
      }
      const meanMm = meanAmountMm(p)
      expect(Math.abs(meanMm / fineArea(p) - 1), `mean score ${mean}`).toBeLessThan(0.0005)
      // Few quantiles are wet where rain is unlikely, and the uppermost part lies above the last one.
      const count = 40_000
      let sum = 0
      for (let k = 0; k < count; k++) sum += amountQuantile(p, (k + 0.5) / count)
      expect(Math.abs(meanMm / (sum / count) - 1), `mean score ${mean}`).toBeLessThan(ofQuantiles)
    }
  })

  it('is 0 where no rain is to be expected', () => {
    const shares = { shareLow: 0.1, shareHigh: 0.2 }
    expect(meanAmountMm({ mean: -9, sdLow: 0.3, sdHigh: 0.4, wideLow: 0.5, wideHigh: 0.6, ...shares, scale })).toBe(0)
  })
})
