import { describe, expect, it } from 'vitest'
import { bearingDeg, distanceM, earthRadiusM } from './distanceM.ts'

describe('distanceM and bearingDeg', () => {
  it('a quarter of the way round is a quarter of the circumference', () => {
    expect(distanceM(0, 10, 90, -50)).toBeCloseTo((Math.PI / 2) * earthRadiusM, 3)
    expect(distanceM(0, 179, 0, -179)).toBeCloseTo((2 / 360) * 2 * Math.PI * earthRadiusM, 3)
  })

  it('matches the law of cosines for an oblique pair (by formula, from memory)', () => {
    const rad = Math.PI / 180
    const cosine =
      Math.sin(36.12 * rad) * Math.sin(33.94 * rad) +
      Math.cos(36.12 * rad) * Math.cos(33.94 * rad) * Math.cos((-86.67 + 118.4) * rad)
    expect(distanceM(36.12, -86.67, 33.94, -118.4)).toBeCloseTo(earthRadiusM * Math.acos(cosine), 1)
  })

  it('north is 0, east 90, and the way back is turned round at the equator', () => {
    expect(bearingDeg(10, 20, 11, 20)).toBeCloseTo(0, 9)
    expect(bearingDeg(0, 20, 0, 23)).toBeCloseTo(90, 9)
    expect(bearingDeg(0, 23, 0, 20)).toBeCloseTo(270, 9)
    expect(bearingDeg(11, 20, 10, 20)).toBeCloseTo(180, 9)
  })
})
