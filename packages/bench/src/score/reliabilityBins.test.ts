import { seededRandom } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { reliabilityBins } from './reliabilityBins.ts'
import { wilsonInterval } from './wilsonInterval.ts'

describe('reliabilityBins', () => {
  it('puts odds into bins by their lower edge, and 1 into the last', () => {
    const bins = reliabilityBins(
      { said: [0, 0.4, 0.49, 0.5, 1, 0.8], happened: [0, 1, 0, 0, 1, 1], day: [1, 2, 3, 4, 5, 6] },
      [0, 0.4, 0.5, 1],
    )
    expect(bins.map((bin) => bin.count)).toEqual([1, 2, 3])
    expect(bins[1]!.meanSaid).toBeCloseTo(0.445, 12)
    expect(bins[2]!.share).toBeCloseTo(2 / 3, 12)
  })

  it('of an empty bin are not known', () => {
    expect(reliabilityBins({ said: [0.9], happened: [1], day: [1] }, [0, 0.5, 1])[0]!.share).toBeNaN()
  })

  it("has Wilson's interval for cases of a day each, and that of a tenth where ten of a day go one way", () => {
    const random = seededRandom(3)
    const outcomes = Float64Array.from({ length: 2000 }, () => (random() < 0.3 ? 1 : 0))
    const ones = outcomes.reduce((sum, one) => sum + one, 0)
    const said = new Float64Array(2000).fill(0.3)
    const alone = reliabilityBins({ said, happened: outcomes, day: outcomes.map((_, i) => i) }, [0, 1])[0]!
    expect(alone.high - alone.low).toBeCloseTo(wilsonInterval(ones, 2000).high - wilsonInterval(ones, 2000).low, 6)
    const together = reliabilityBins(
      {
        said: new Float64Array(20_000).fill(0.3),
        happened: Float64Array.from({ length: 20_000 }, (_, i) => outcomes[Math.floor(i / 10)]!),
        day: Float64Array.from({ length: 20_000 }, (_, i) => Math.floor(i / 10)),
      },
      [0, 1],
    )[0]!
    expect(together.low).toBeCloseTo(alone.low, 6)
    expect(together.high).toBeCloseTo(alone.high, 6)
  })
})
