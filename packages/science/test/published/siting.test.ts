/**
 * Elevation angles, exposure classes and wind factors against the handbook [WMO8] Annex 1.D and 6.4.1, [Yang1998] and
 * [Kochendorfer2017]. The numbers of this file were worked out by hand from those formulas, apart from the code.
 */
import { describe, expect, it } from 'vitest'
import { exposureClass } from '../../src/siting/exposureClass.ts'
import { skylineAt } from '../../src/siting/skyline.ts'
import { dailyCatchShare, halfHourCatchShare, windAtRimMPerS } from '../../src/siting/wind.ts'
import type { Obstacle } from '../../src/siting/yard.ts'

const eye = { xM: 3, yM: -7 }
const flat = { slopeDeg: 0, hasWindShield: false }

/** A thin pole of this height at this distance to the north-east: its near side is where the distance is measured to. */
function pole(topM: number, distanceM: number): Obstacle {
  const along = (distanceM + 0.01) * Math.SQRT1_2
  return {
    id: 'pole',
    kind: 'tree',
    name: '',
    shape: { form: 'round', center: { xM: eye.xM + along, yM: eye.yM + along }, radiusM: 0.01, topM },
  }
}

const seen = (topM: number, distanceM: number, rimM: number) =>
  skylineAt({ obstacles: [pole(topM, distanceM)] }, eye, rimM)
const classOf = (topM: number, distanceM: number, rimM: number) =>
  exposureClass(seen(topM, distanceM, rimM), flat).class

describe('elevation angle by the ratio distance / height above the rim', () => {
  it.each([
    [0.5, 63.43],
    [1, 45],
    [Math.sqrt(3), 30],
    [2, 26.57],
    [3, 18.43],
    [4, 14.04],
    [10, 5.71],
  ])('%f -> %f degrees', (ratio, angle) => {
    const { obstacles, worstDeg } = seen(0.6 + 5, 5 * ratio, 0.6)
    expect(worstDeg).toBeCloseTo(angle, 2)
    expect(obstacles[0]!.ratio).toBeCloseTo(ratio, 9)
    expect(obstacles[0]!.bearingDeg).toBeCloseTo(45, 6)
  })
})

describe('exposure classes, worked examples', () => {
  it.each([
    ['a tree of 12 m, rim 0.6 m, at 25 m', 12, 25, 0.6, 2, 24.5, 2.19],
    ['the same tree at 20 m', 12, 20, 0.6, 3, 29.7, 1.75],
    ['a house of 6 m, rim 1.5 m, at 5 m', 6, 5, 1.5, 3, 42.0, 1.11],
    ['a fence of 1.8 m, rim 0.6 m, at 2 m', 1.8, 2, 0.6, 3, 30.96, 1.67],
    ['the same fence, rim raised to 1.5 m', 1.8, 2, 1.5, 2, 8.53, 6.67],
  ])('%s', (_, topM, distanceM, rimM, expected, angle, ratio) => {
    const line = seen(topM, distanceM, rimM)
    expect(line.worstDeg).toBeCloseTo(angle, 1)
    expect(line.obstacles[0]!.ratio).toBeCloseTo(ratio, 2)
    expect(classOf(topM, distanceM, rimM)).toBe(expected)
  })

  it('just half the height is class 5, just once class 4, just twice class 2', () => {
    expect([classOf(6, 2.5, 1), classOf(6, 5, 1), classOf(6, 10, 1)]).toEqual([5, 4, 2])
    expect([classOf(6, 2.51, 1), classOf(6, 5.01, 1), classOf(6, 9.99, 1)]).toEqual([4, 3, 3])
  })

  it('an open lawn without any obstacle is class 2, and class 1 with a wind shield', () => {
    const open = skylineAt({ obstacles: [] }, eye, 0.6)
    expect(exposureClass(open, flat)).toMatchObject({ class: 2, reasons: [{ kind: 'no shelter' }] })
    expect(exposureClass(open, { slopeDeg: 5, hasWindShield: true }).class).toBe(1)
  })

  it('slopes of 1/3 and 30 degrees part the classes', () => {
    const open = skylineAt({ obstacles: [] }, eye, 0.6)
    const of = (slopeDeg: number) => exposureClass(open, { slopeDeg, hasWindShield: false }).class
    expect([of(18.4), of(18.44), of(30), of(30.1)]).toEqual([2, 3, 3, 4])
  })

  it('an even hedge all around seen under 20 degrees is class 1; one gap makes it class 2', () => {
    const hedge = (gap: boolean): Obstacle => ({
      id: 'hedge',
      kind: 'hedge',
      name: '',
      shape: {
        form: 'line',
        points: Array.from({ length: gap ? 360 : 361 }, (_, k) => ({
          xM: eye.xM + 4 * Math.sin((k * Math.PI) / 180),
          yM: eye.yM + 4 * Math.cos((k * Math.PI) / 180),
        })).slice(0, gap ? 340 : 361),
        topM: 0.6 + 4 * Math.tan((20 * Math.PI) / 180),
      },
    })
    const of = (gap: boolean) => exposureClass(skylineAt({ obstacles: [hedge(gap)] }, eye, 0.6), flat).class
    expect([of(false), of(true)]).toEqual([1, 2])
  })
})

describe('wind', () => {
  it.each([
    [1, 0.03, 0.604],
    [1, 0.01, 0.667],
    [1, 0.1, 0.5],
    [1.5, 0.03, 0.673],
    [2, 0.03, 0.723],
    [0.6, 0.03, 0.516],
    [0.3, 0.03, 0.396],
  ])('from 10 m to %f m over a roughness of %f m: factor %f', (rimM, z0M, factor) => {
    expect(windAtRimMPerS(1, { rimM, z0M })).toBeCloseTo(factor, 3)
  })

  it('obstacles under a mean angle of 10 degrees take 24 % of it', () => {
    expect(windAtRimMPerS(5, { rimM: 1, meanAngleDeg: 10 })).toBeCloseTo(5 * 0.6036 * 0.76, 2)
  })

  it.each([
    ['rain', 3, 0.89, 0.917],
    ['mixed', 3, 0.7575, 0.8418],
    ['snow', 3, 0.527, 0.764],
    ['rain', 5, 0.855, 0.884],
    ['snow', 5, 0.292, 0.515],
  ] as const)('daily catch, %s at %d m/s: %f bare, %f shielded', (phase, wind, bare, shielded) => {
    expect(dailyCatchShare(phase, wind, false)).toBeCloseTo(bare, 3)
    expect(dailyCatchShare(phase, wind, true)).toBeCloseTo(shielded, 3)
  })

  it.each([
    ['unshielded rim', 2, -5, 0.653],
    ['unshielded rim', 3, -2, 0.571],
    ['unshielded rim', 5, -5, 0.345],
    ['unshielded rim', 5, 0, 0.576],
    ['unshielded rim', 5, 2, 0.842],
    ['unshielded rim', 9, -5, 0.216],
    ['shielded rim', 2, -5, 0.8],
    ['shielded rim', 3, -2, 0.731],
    ['shielded rim', 5, -5, 0.573],
    ['shielded rim', 5, 0, 0.734],
    ['unshielded 10 m', 5, -5, 0.425],
  ] as const)('half-hour catch, %s at %d m/s and %d °C: %f', (gauge, wind, temperature, share) => {
    expect(halfHourCatchShare(gauge, wind, temperature)).toBeCloseTo(share, 3)
  })
})
