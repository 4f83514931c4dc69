import { seededRandom } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { pitHistogram } from './pitHistogram.ts'
import { forecastCell } from './quantileCdf.ts'

const levelCount = 200
const stepMm = 0.2

/** Dry with the given chance, else exponential beyond half a step: a law whose quantiles are known in closed form. */
function dryOrExponential(dryChance: number, meanMm: number) {
  const amountAt = (level: number): number =>
    level <= dryChance ? 0 : stepMm / 2 - meanMm * Math.log((1 - level) / (1 - dryChance))
  const quantilesMm = Float64Array.from({ length: levelCount }, (_, k) => amountAt((k + 0.5) / levelCount))
  return { amountAt, forecast: { quantilesMm, start: 0, levelCount, dryChance } }
}

/** Amounts drawn from one law, written in steps, and judged by another. */
function pitOf(
  count: number,
  truth: { dryChance: number; meanMm: number },
  said: { dryChance: number; meanMm: number },
) {
  const random = seededRandom(7)
  const { amountAt } = dryOrExponential(truth.dryChance, truth.meanMm)
  const { forecast } = dryOrExponential(said.dryChance, said.meanMm)
  const pit = Float64Array.from({ length: count }, () => {
    const writtenMm = Math.round(amountAt(random()) / stepMm) * stepMm
    const { low, high } = forecastCell(forecast, writtenMm, stepMm)
    return low + random() * (high - low)
  })
  return pitHistogram(
    pit,
    pit.map((_, i) => i),
  )
}

describe('pitHistogram', () => {
  it('of a forecast that is the law of the readings is even, dry days and rounding cells included', () => {
    const law = { dryChance: 0.43, meanMm: 6 }
    const { bins } = pitOf(20_000, law, law)
    const outside = bins.filter((bin) => Math.abs(bin.share - 0.05) > bin.independentHalf)
    // 20 bins at 95 %: one outside is the mean; four or more have a chance of 0.016 (binomial, by hand).
    expect(outside.length).toBeLessThan(4)
    for (const bin of bins) expect(Math.abs(bin.share - 0.05)).toBeLessThan(2 * bin.independentHalf)
  })

  it('of too narrow a forecast has its heaviest bin at the top; of too dry a one at the end of the dry days', () => {
    const narrow = pitOf(20_000, { dryChance: 0.43, meanMm: 6 }, { dryChance: 0.43, meanMm: 3 })
    expect(narrow.bins[19]!.share).toBeGreaterThan(0.05 + 5 * narrow.bins[19]!.independentHalf)
    const dry = pitOf(20_000, { dryChance: 0.43, meanMm: 6 }, { dryChance: 0.6, meanMm: 6 })
    // 0.43 of the readings spread over 12 bins that should hold 0.6.
    expect(dry.bins[3]!.share).toBeCloseTo(0.43 / 12, 2)
  })

  it('has limits of the binomial for independent values, and wider ones where a day moves as one', () => {
    const random = seededRandom(11)
    const values = Float64Array.from({ length: 4000 }, () => random())
    const alone = pitHistogram(
      values,
      values.map((_, i) => i),
    )
    // 1.96 sqrt(0.05 × 0.95 / 4000)
    expect(alone.bins[4]!.independentHalf).toBeCloseTo(0.006754, 5)
    expect(alone.bins[4]!.byDayHalf / alone.bins[4]!.independentHalf).toBeCloseTo(1, 0)
    // Each day's value ten times: a tenth of the independent values, so limits wider by the root of ten.
    const tenfold = Float64Array.from({ length: 40_000 }, (_, i) => values[Math.floor(i / 10)]!)
    const together = pitHistogram(
      tenfold,
      tenfold.map((_, i) => Math.floor(i / 10)),
    )
    expect(together.bins[4]!.byDayHalf / together.bins[4]!.independentHalf).toBeCloseTo(Math.sqrt(10), 0)
  })
})
