/**
 * Hail against outside values: sizes by object and thresholds as the offices' reference tables print them [NWSHail], fall
 * speeds worked out by hand from the published formulas, masses and energies of a 0.9 g/cm³ sphere to the digits of a
 * table made with another program.
 */
import { describe, expect, it } from 'vitest'
import { hailEnergy } from '../../src/urgent/hailEnergy.ts'
import { hailFallSpeedsMps } from '../../src/urgent/hailFall.ts'
import { hailObjectMm, hailObjects, hailSizeClass } from '../../src/urgent/hailObjects.ts'
import { rainIntensity } from '../../src/urgent/rainRate.ts'

describe('sizes by object', () => {
  // Object, inches, and whole millimetres as the tables print them.
  const printed = [
    ['pea', 0.25, 6],
    ['marble', 0.5, 13],
    ['penny', 0.75, 19],
    ['nickel', 0.88, 22],
    ['quarter', 1, 25],
    ['half dollar', 1.25, 32],
    ['walnut', 1.5, 38],
    ['golf ball', 1.75, 44],
    ['hen egg', 2, 51],
    ['tennis ball', 2.5, 64],
    ['baseball', 2.75, 70],
    ['large apple', 3, 76],
    ['grapefruit', 4, 102],
    ['softball', 4.5, 114],
  ] as const

  it('are those of the reference tables, in inches and in whole millimetres', () => {
    expect(hailObjects.map(({ name, inches }) => [name, inches])).toEqual(printed.map(([name, inch]) => [name, inch]))
    // The tables print 22 for 0.88 in (22.35) and 44 for 1.75 in (44.45), rounded as everywhere.
    for (const [name, , mm] of printed) expect(Math.round(hailObjectMm(name))).toBe(mm)
  })

  it('a measured stone is told by the largest object that it reaches', () => {
    expect(hailSizeClass(25.4)).toBe('quarter')
    expect(hailSizeClass(25)).toBe('nickel') // 0.98 in
    expect(hailSizeClass(203.2)).toBe('softball') // 8.0 in, the largest on record in the United States
    expect(hailSizeClass(5)).toBeNull()
  })
})

describe('fall speed and energy', () => {
  // D in; mass g; m/s by Heymsfield 2018, Heymsfield & Wright 2014, Knight & Heymsfield 1983, smooth sphere; J slowest of the
  // first and of the sphere.
  const table = [
    [0.75, 3.26, 9.7, 8.4, 12.1, 17.6, 0.15, 0.51],
    [1.0, 7.72, 11.9, 10.7, 14.1, 20.4, 0.55, 1.6],
    [1.75, 41.4, 17.9, 17.1, 19.3, 27.0, 6.6, 15.0],
    [4.5, 704, 35.2, 37.8, 32.5, 43.2, 437, 658],
  ] as const
  const within = (got: number, printed: number) => {
    const digits = String(printed).split('.')[1]?.length ?? 0
    expect(Math.abs(got - printed)).toBeLessThanOrEqual(0.51 * 10 ** -digits + 0.002 * printed)
  }

  it('agree with the worked table in speed, mass and energy', () => {
    for (const [inches, massG, h2018, hw2014, kh1983, sphere, jH2018, jSphere] of table) {
      const speeds = hailFallSpeedsMps(inches * 25.4)
      within(speeds.heymsfield2018, h2018)
      within(speeds.heymsfieldWright2014, hw2014)
      within(speeds.knightHeymsfield1983, kh1983)
      within(speeds.smoothSphere, sphere)
      const energy = hailEnergy(inches * 25.4)
      within(energy.massG, massG)
      within((energy.massG / 2000) * speeds.heymsfield2018 ** 2, jH2018)
      within(energy.highJ, jSphere)
      expect(energy.lowJ).toBeLessThanOrEqual(jH2018 * 1.01)
    }
  })

  it('refuses a stone without size', () => {
    expect(() => hailFallSpeedsMps(0)).toThrow('OUT_OF_DOMAIN')
    expect(() => hailEnergy(Number.NaN)).toThrow('OUT_OF_DOMAIN')
  })
})

it('rain classes change where the Glossary and the WMO say: 0.10 in/h, 0.30 in/h, 50 mm/h', () => {
  expect([0.1, 0.11, 0.3, 0.31].map((inches) => rainIntensity(inches * 25.4))).toEqual([
    'light',
    'moderate',
    'moderate',
    'heavy',
  ])
  expect([49.9, 50].map(rainIntensity)).toEqual(['heavy', 'violent'])
})
