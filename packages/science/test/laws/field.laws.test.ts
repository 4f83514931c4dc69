import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { areaMeans } from '../../src/field/areaMeans.ts'
import type { DayAmounts, FieldValues } from '../../src/field/fieldDay.ts'
import type { FieldParams } from '../../src/field/fieldParams.ts'
import { fieldQuantiles } from '../../src/field/fieldQuantiles.ts'
import { fieldWith } from '../../src/field/fieldWith.ts'
import { fitField } from '../../src/field/fitField.ts'
import type { GaugeSet } from '../../src/network/gaugeSet.ts'
import { pointsInside } from '../../src/space/rings.ts'
import { seededRandom } from '../../src/stats/seededRandom.ts'

const seed = fc.integer({ min: 1, max: 1_000_000 })
const options = { numRuns: 40, seed: 11 }

interface World {
  gauges: GaugeSet
  day: DayAmounts
  targets: { xM: Float64Array; yM: Float64Array }
  params: FieldParams
  random: () => number
}

/** A day of a network, a third of it dry, and parameters, out of one number; sometimes more gauges than all hear. */
function world(from: number): World {
  const random = seededRandom(from)
  const n = from % 4 === 0 ? 90 : 5 + Math.floor(20 * random())
  const list = (count: number, size: number): Float64Array =>
    Float64Array.from({ length: count }, () => size * random())
  const amountMm = Float64Array.from({ length: n }, () =>
    random() < 0.3 ? 0 : Math.round((0.3 + 25 * random() ** 2) * 10) / 10,
  )
  return {
    gauges: {
      ids: Array.from({ length: n }, (_, g) => `g${g}`),
      xM: list(n, 100_000),
      yM: list(n, 80_000),
      elevationM: new Float64Array(n),
    },
    day: { amountMm, resolutionMm: 0.2 },
    targets: { xM: list(12, 120_000), yM: list(12, 100_000) },
    params: {
      kind: from % 2 ? 'spherical' : 'exponential',
      practicalRangeM: 20_000 + 100_000 * random(),
      majorBearingDeg: 180 * random(),
      anisotropyRatio: 0.3 + 0.7 * random(),
      nuggetShare: 0.02 + 0.3 * random(),
      power: 0.3 + 0.4 * random(),
      unitMm: 3 + 5 * random(),
      sd: 0.4 + 0.5 * random(),
      meanCentre: 0.6,
    },
    random,
  }
}

const near = (got: FieldValues, wanted: FieldValues, factor = 1): void => {
  for (const name of ['meanMm', 'p10Mm', 'p50Mm', 'p90Mm'] as const)
    for (let t = 0; t < wanted.meanMm.length; t++) {
      const size = Math.max(1, factor, factor * wanted[name][t]!)
      expect(Math.abs(got[name][t]! - factor * wanted[name][t]!)).toBeLessThan(1e-6 * size)
    }
  for (let t = 0; t < wanted.meanMm.length; t++) expect(got.dryChance[t]).toBeCloseTo(wanted.dryChance[t]!, 6)
}

describe('laws of the field', () => {
  it('is exact at a wet gauge when there is no nugget and no rounding', () => {
    fc.assert(
      fc.property(seed, (from) => {
        const { gauges, day, params } = world(from)
        const exact = { ...day, resolutionMm: 0 }
        const field = fieldWith({ ...params, nuggetShare: 0 }, gauges, exact, gauges)
        for (let g = 0; g < gauges.xM.length; g++) {
          const amountMm = day.amountMm[g]!
          if (amountMm === 0) continue
          expect(Math.abs(field.p50Mm[g]! / amountMm - 1)).toBeLessThan(1e-3)
          expect(Math.abs(field.meanMm[g]! / amountMm - 1)).toBeLessThan(1e-3)
          expect(field.p90Mm[g]! - field.p10Mm[g]!).toBeLessThan(0.02 * amountMm + 1e-6)
        }
      }),
      options,
    )
  })

  it('does not care where the map begins, which way it is turned or how the gauges are numbered', () => {
    fc.assert(
      fc.property(seed, fc.double({ min: -170, max: 170, noNaN: true }), (from, turnDeg) => {
        const { gauges, day, targets, params, random } = world(from)
        const wanted = fieldWith(params, gauges, day, targets)
        const order = Array.from(gauges.xM.keys()).sort(() => random() - 0.5)
        const cos = Math.cos((turnDeg * Math.PI) / 180)
        const sin = Math.sin((turnDeg * Math.PI) / 180)
        // Clockwise by turnDeg, then moved.
        const turnX = (x: number, y: number): number => x * cos + y * sin + 300_000
        const turnY = (x: number, y: number): number => y * cos - x * sin - 40_000
        const turned: GaugeSet = {
          ids: order.map((g) => gauges.ids[g]!),
          xM: Float64Array.from(order, (g) => turnX(gauges.xM[g]!, gauges.yM[g]!)),
          yM: Float64Array.from(order, (g) => turnY(gauges.xM[g]!, gauges.yM[g]!)),
          elevationM: new Float64Array(order.length),
        }
        const got = fieldWith(
          { ...params, majorBearingDeg: params.majorBearingDeg + turnDeg },
          turned,
          { ...day, amountMm: Float64Array.from(order, (g) => day.amountMm[g]!) },
          {
            xM: targets.xM.map((x, t) => turnX(x, targets.yM[t]!)),
            yM: targets.yM.map((y, t) => turnY(targets.xM[t]!, y)),
          },
        )
        // Sweeps run along a curve on the map, so dry gauges settle by another path: equal to what the sweeps promise.
        for (let t = 0; t < targets.xM.length; t++) {
          expect(Math.abs(got.p50Mm[t]! - wanted.p50Mm[t]!)).toBeLessThan(0.01 * (1 + wanted.p90Mm[t]!))
          expect(Math.abs(got.p90Mm[t]! - wanted.p90Mm[t]!)).toBeLessThan(0.01 * (1 + wanted.p90Mm[t]!))
          expect(Math.abs(got.dryChance[t]! - wanted.dryChance[t]!)).toBeLessThan(0.01)
        }
      }),
      options,
    )
  })

  it('numbering alone changes nothing at all', () => {
    fc.assert(
      fc.property(seed, (from) => {
        const { gauges, day, targets, params, random } = world(from)
        const order = Array.from(gauges.xM.keys()).sort(() => random() - 0.5)
        const shuffled: GaugeSet = {
          ids: order.map((g) => gauges.ids[g]!),
          xM: Float64Array.from(order, (g) => gauges.xM[g]!),
          yM: Float64Array.from(order, (g) => gauges.yM[g]!),
          elevationM: new Float64Array(order.length),
        }
        const amountMm = Float64Array.from(order, (g) => day.amountMm[g]!)
        near(fieldWith(params, shuffled, { ...day, amountMm }, targets), fieldWith(params, gauges, day, targets))
      }),
      options,
    )
  })

  it('rain, unit and resolution × c give amounts × c and the same chance of dry', () => {
    fc.assert(
      fc.property(seed, fc.double({ min: 0.1, max: 20, noNaN: true }), (from, factor) => {
        const { gauges, day, targets, params } = world(from)
        const wanted = fieldWith(params, gauges, day, targets)
        const got = fieldWith(
          { ...params, unitMm: factor * params.unitMm },
          gauges,
          { amountMm: day.amountMm.map((a) => factor * a), resolutionMm: 0.2 * factor },
          targets,
        )
        near(got, wanted, factor)
      }),
      options,
    )
  })

  it('quantiles rise with their level, amounts are never below 0, chances lie between 0 and 1', () => {
    fc.assert(
      fc.property(seed, (from) => {
        const { gauges, day, targets, params } = world(from)
        const field = fieldWith(params, gauges, day, targets)
        const levels = [0.01, 0.1, 0.3, 0.5, 0.9, 0.99]
        const quantiles = fieldQuantiles(params, gauges, day, targets, levels)
        for (let t = 0; t < targets.xM.length; t++) {
          for (let l = 1; l < 6; l++) expect(quantiles[6 * t + l]).toBeGreaterThanOrEqual(quantiles[6 * t + l - 1]!)
          expect(quantiles[6 * t + 1]).toBeCloseTo(field.p10Mm[t]!, 9)
          expect(quantiles[6 * t + 4]).toBeCloseTo(field.p90Mm[t]!, 9)
          expect(field.p10Mm[t]).toBeGreaterThanOrEqual(0)
          expect(field.dryChance[t]).toBeGreaterThanOrEqual(0)
          expect(field.dryChance[t]).toBeLessThanOrEqual(1)
          // The median is 0 exactly where dry is the likelier.
          expect(field.p50Mm[t] === 0).toBe(field.dryChance[t]! >= 0.5)
        }
      }),
      options,
    )
  })

  it('fitted parameters follow the amounts’ unit and do not depend on the numbering', () => {
    fc.assert(
      fc.property(seed, (from) => {
        const { gauges, day, random } = world(from)
        const wanted = fitField(gauges, day)
        expect(wanted.nuggetShare).toBeGreaterThan(0)
        expect(wanted.nuggetShare).toBeLessThan(1)
        expect(wanted.anisotropyRatio).toBeGreaterThan(0)
        expect(wanted.anisotropyRatio).toBeLessThanOrEqual(1)
        const order = Array.from(gauges.xM.keys()).sort(() => random() - 0.5)
        const shuffled: GaugeSet = {
          ids: order.map((g) => gauges.ids[g]!),
          xM: Float64Array.from(order, (g) => gauges.xM[g]!),
          yM: Float64Array.from(order, (g) => gauges.yM[g]!),
          elevationM: new Float64Array(order.length),
        }
        const got = fitField(shuffled, {
          amountMm: Float64Array.from(order, (g) => 8 * day.amountMm[g]!),
          resolutionMm: 1.6,
        })
        expect(got.unitMm / wanted.unitMm).toBeCloseTo(day.amountMm.some((a) => a > 0) ? 8 : 1, 9)
        expect(got.practicalRangeM / wanted.practicalRangeM).toBeCloseTo(1, 2)
        expect(got.power).toBeCloseTo(wanted.power, 2)
      }),
      { ...options, numRuns: 15 },
    )
  })

  it('an area’s mean lies between the least and the largest the field expects inside it', () => {
    fc.assert(
      fc.property(seed, (from) => {
        const { gauges, day, params, random } = world(from)
        const x = 70_000 * random()
        const y = 50_000 * random()
        const ring = Float64Array.of(x, y, x + 30_000, y + 2000, x + 26_000, y + 24_000, x - 3000, y + 18_000, x, y)
        const got = areaMeans(params, gauges, day, [[ring]], { draws: 800 })
        const points = pointsInside([ring], 150)
        const inside = fieldWith(params, gauges, day, {
          xM: points.filter((_, k) => k % 2 === 0),
          yM: points.filter((_, k) => k % 2 === 1),
        }).meanMm
        // Simulated, so known to a few standard errors.
        const slack = (4 * got.sdMm[0]!) / Math.sqrt(800) + 0.02
        expect(got.meanMm[0]).toBeGreaterThan(Math.min(...inside) - slack)
        expect(got.meanMm[0]).toBeLessThan(Math.max(...inside) + slack)
        expect(got.p10Mm[0]).toBeLessThanOrEqual(got.p90Mm[0]!)
        expect(got.sdMm[0]).toBeGreaterThanOrEqual(0)
      }),
      { ...options, numRuns: 20 },
    )
  })
})
