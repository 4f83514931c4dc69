import { describe, expect, it } from 'vitest'
import { pointsAt } from '../../test/support/rainyNetwork.ts'
import { normalDeviates, seededRandom } from '../stats/seededRandom.ts'
import { type Climate, wetGrid } from './climate.ts'
import { climateAtPoints } from './climateAtPoints.ts'

/** Thirty gauges with uneven places and heights, a climate by `logScale` and `logit`. */
function network(logScale: (g: number, elevationM: number) => number, logit = (_: number) => 0.4) {
  const random = seededRandom(31)
  const count = 30
  const gauges = pointsAt(
    ...Array.from({ length: count }, () => [80_000 * random(), 80_000 * random(), 200 + 1500 * random()] as const),
  )
  const climate: Climate = {
    gaugeCount: count,
    resolutionMm: Float64Array.from({ length: count }, (_, g) => (g % 3 === 0 ? 0.1 : 0.2)),
    rounding: { writtenMm: 0.1, stepsMm: [0.1], share: new Float64Array(count).fill(1) },
    dryShare: Float64Array.from({ length: count * 12 }, (_, i) => 1 / (1 + Math.exp(-logit(Math.floor(i / 12))))),
    scaleMm: Float64Array.from({ length: count * 12 }, (_, i) =>
      Math.exp(logScale(Math.floor(i / 12), gauges.elevationM[Math.floor(i / 12)]!) + 0.02 * (i % 12)),
    ),
    wetScore: new Float64Array(12 * wetGrid.count),
  }
  return { gauges, climate }
}

describe('climateAtPoints', () => {
  it('of equal gauges is theirs, month by month, with the resolution that most of them have', () => {
    const { gauges, climate } = network(() => 1.1)
    const at = climateAtPoints(gauges, climate, pointsAt([20_000, 33_000, 900], [71_000, 8_000]))
    expect(at.scaleMm[5]).toBeCloseTo(Math.exp(1.1 + 0.1), 9)
    expect(at.scaleMm[12 + 11]).toBeCloseTo(Math.exp(1.1 + 0.22), 9)
    expect(at.dryShare[12 + 3]).toBeCloseTo(1 / (1 + Math.exp(-0.4)), 9)
    expect([...at.resolutionMm]).toEqual([0.2, 0.2])
  })

  it('at a gauge’s place goes most of the way to that gauge, and lies within what the near gauges say', () => {
    const { gauges, climate } = network((g) => (g === 7 ? 2 : 1))
    const at = climateAtPoints(gauges, climate, pointsAt([gauges.xM[7]!, gauges.yM[7]!]))
    expect(Math.log(at.scaleMm[0]!)).toBeGreaterThan(1.5)
    expect(Math.log(at.scaleMm[0]!)).toBeLessThan(2)
  })

  it('rises with elevation as far as the gauges’ own climates do, and no higher than they stand', () => {
    const perM = 0.0004
    const { gauges, climate } = network((_, elevationM) => 1 + perM * elevationM)
    const points = pointsAt([40_000, 40_000, 500], [40_000, 40_000, 1300], [40_000, 40_000, 9000], [40_000, 40_000])
    const log = [...climateAtPoints(gauges, climate, points).scaleMm].filter((_, i) => i % 12 === 0).map(Math.log)
    expect(log[0]).toBeCloseTo(1 + perM * 500, 6)
    expect(log[1]).toBeCloseTo(1 + perM * 1300, 6)
    expect(log[2]).toBeCloseTo(1 + perM * Math.max(...gauges.elevationM), 6)
    expect(log[3]).toBeGreaterThan(1 + perM * 200)
  })

  it('takes next to nothing from elevation where the climates go up and down without it', () => {
    const deviate = normalDeviates(seededRandom(5))
    const noise = Array.from({ length: 30 }, () => 0.2 * deviate())
    const { gauges, climate } = network((g) => 1 + noise[g]!)
    const [low, high] = climateAtPoints(
      gauges,
      climate,
      pointsAt([40_000, 40_000, 300], [40_000, 40_000, 1600]),
    ).scaleMm.filter((_, i) => i % 12 === 0)
    expect(Math.abs(Math.log(high! / low!))).toBeLessThan(0.1)
  })

  it('does without elevation where gauges have none', () => {
    const { gauges, climate } = network((g) => 1 + g / 100)
    gauges.elevationM.fill(Number.NaN)
    const [known, unknown] = climateAtPoints(
      gauges,
      climate,
      pointsAt([10_000, 50_000, 800], [10_000, 50_000]),
    ).scaleMm.filter((_, i) => i % 12 === 0)
    expect(known).toBe(unknown)
    expect(known).toBeGreaterThan(Math.E)
  })
})
