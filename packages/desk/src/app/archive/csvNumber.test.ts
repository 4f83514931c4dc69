import { describe, expect, it } from 'vitest'
import { depth, odds } from './csvNumber.ts'

describe('odds', () => {
  it('keeps six significant digits however small, so that no reading ties with another at 0', () => {
    expect(odds(0.123456789)).toBe('0.123457')
    expect(Number(odds(1.23456789e-12))).toBe(1.23457e-12)
    expect(Number(odds(4.5e-300))).toBe(4.5e-300)
    expect(odds(0)).toBe('0')
    expect(odds(1)).toBe('1')
  })
})

describe('depth', () => {
  it('writes millimetres to the micrometre, and nothing where there is no amount', () => {
    expect(depth(12.34567)).toBe('12.346')
    expect(depth(0)).toBe('0')
    expect(depth(Number.NaN)).toBe('')
  })
})
