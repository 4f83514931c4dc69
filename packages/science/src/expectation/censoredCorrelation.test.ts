import { describe, expect, it } from 'vitest'
import { normalCdf, normalPdf } from '../stats/normalCdf.ts'
import { uncensorCorrelation } from './censoredCorrelation.ts'

/** Correlation of two scores, each put at the mean of its dry part below a threshold: by summing over a fine plane grid. */
function censoredByGrid(full: number, threshold: number): number {
  const dryMean = -normalPdf(threshold) / normalCdf(threshold)
  const step = 0.05
  const rest = Math.sqrt(1 - full * full)
  let xy = 0
  let xx = 0
  for (let x = -7; x <= 7; x += step) {
    // Cell middles lie at odd halves of a step, thresholds between them.
    const seenX = x + step / 2 < threshold ? dryMean : x + step / 2
    for (let u = -7; u <= 7; u += step) {
      const y = full * (x + step / 2) + rest * (u + step / 2)
      const mass = normalPdf(x + step / 2) * normalPdf(u + step / 2) * step * step
      xy += mass * seenX * (y < threshold ? dryMean : y)
      xx += mass * seenX * seenX
    }
  }
  return xy / xx
}

describe('uncensorCorrelation', () => {
  it('finds the correlation of the full scores from that of the censored ones, to 0.05 (checked by integration)', () => {
    for (const [full, threshold] of [
      [0.1, 0.3],
      [0.5, 0.3],
      [0.8, -0.5],
      [0.92, 0.8],
      [0.65, 1.5],
      [-0.2, 0.1],
    ] as const) {
      const found = uncensorCorrelation(censoredByGrid(full, threshold), threshold)
      expect(Math.abs(found - full)).toBeLessThan(0.05)
    }
  })

  it('changes nothing where hardly any day is dry, and more the more days are', () => {
    expect(uncensorCorrelation(0.6, -2.5)).toBeCloseTo(0.6, 1)
    const byDryness = [-1, 0, 1, 2].map((threshold) => uncensorCorrelation(0.5, threshold))
    for (let k = 1; k < 4; k++) expect(byDryness[k]!).toBeGreaterThan(byDryness[k - 1]!)
  })

  it('stays within -1 and 1, and never falls as the seen correlation rises', () => {
    let before = -1
    for (let seen = -1; seen <= 1.001; seen += 0.05) {
      const full = uncensorCorrelation(seen, 0.4)
      expect(full).toBeGreaterThanOrEqual(before)
      expect(full).toBeLessThan(1)
      before = full
    }
  })
})
