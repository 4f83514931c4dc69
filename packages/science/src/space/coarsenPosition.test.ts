import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { coarsenPosition } from './coarsenPosition.ts'

describe('coarsenPosition', () => {
  it('leaves two decimals, halves away from zero, by decimal digits', () => {
    expect(coarsenPosition({ latDeg: 45.67891, lonDeg: -11.23456 })).toEqual({ latDeg: 45.68, lonDeg: -11.23 })
    expect(coarsenPosition({ latDeg: 1.005, lonDeg: -1.005 })).toEqual({ latDeg: 1.01, lonDeg: -1.01 })
    expect(coarsenPosition({ latDeg: -0.001, lonDeg: 1e-9 })).toEqual({ latDeg: 0, lonDeg: 0 })
    expect(coarsenPosition({ latDeg: 45.67891, lonDeg: 11.2 }, 1)).toEqual({ latDeg: 45.7, lonDeg: 11.2 })
    expect(() => coarsenPosition({ latDeg: 1, lonDeg: 1 }, 1.5)).toThrow(RangeError)
  })

  it('moves a place by at most half a step, does nothing the second time, and leaves no further decimal', () => {
    const degrees = (most: number) => fc.double({ min: -most, max: most, noNaN: true })
    fc.assert(
      fc.property(degrees(90), degrees(180), fc.integer({ min: 0, max: 5 }), (latDeg, lonDeg, decimals) => {
        const once = coarsenPosition({ latDeg, lonDeg }, decimals)
        const half = 0.5 * 10 ** -decimals + 1e-9
        expect(Math.abs(once.latDeg - latDeg)).toBeLessThanOrEqual(half)
        expect(Math.abs(once.lonDeg - lonDeg)).toBeLessThanOrEqual(half)
        expect(coarsenPosition(once, decimals)).toEqual(once)
        expect(once.latDeg).toBe(Number(once.latDeg.toFixed(decimals)))
      }),
    )
  })
})
