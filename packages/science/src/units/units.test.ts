import { describe, expect, it } from 'vitest'
import { inchesFromMm, inchesFromUm, mmFromInches, mmFromUm, umFromInches, umFromMm } from './convertUm.ts'
import { formatAmount } from './formatAmount.ts'
import { isWholeSteps, resolutionsUm, roundUm } from './roundUm.ts'
import { hundredthInchUmFromMm, hundredthInchUmFromTenthsMm, tenthsMmFromUm, umFromTenthsMm } from './tenthsMm.ts'

const um = (amountUm: number) => ({ amountUm, isTrace: false })

describe('conversions', () => {
  it('one inch is 25.4 mm and 25 400 µm', () => {
    expect(umFromInches(1)).toBe(25_400)
    expect(mmFromInches(2)).toBe(50.8)
    expect(inchesFromMm(63.5)).toBe(2.5)
    expect(mmFromUm(254)).toBe(0.254)
    expect(inchesFromUm(762)).toBe(0.03)
    expect(umFromMm(0.3)).toBe(300)
  })
  it('rounds halves away from zero and keeps missing missing', () => {
    expect(umFromMm(0.0005)).toBe(1)
    expect(umFromMm(-0.0005)).toBe(-1)
    expect(umFromMm(Number.NaN)).toBeNaN()
    expect(umFromInches(Number.NaN)).toBeNaN()
  })
})

describe('roundUm', () => {
  it('rounds to hundredths of an inch, tenths and fifths of a millimetre, halves up', () => {
    expect(roundUm(380, resolutionsUm.hundredthInch)).toBe(254)
    expect(roundUm(381, resolutionsUm.hundredthInch)).toBe(508)
    expect(roundUm(6_350, resolutionsUm.tenthMm)).toBe(6_400)
    expect(roundUm(6_349, resolutionsUm.tenthMm)).toBe(6_300)
    expect(roundUm(6_300, resolutionsUm.fifthMm)).toBe(6_400)
    expect(roundUm(6_299, resolutionsUm.fifthMm)).toBe(6_200)
  })
  it('refuses what is no whole amount', () => {
    expect(() => roundUm(-254, 100)).toThrow('OUT_OF_DOMAIN')
    expect(() => roundUm(0.5, 100)).toThrow('OUT_OF_DOMAIN')
    expect(() => roundUm(254, 0)).toThrow('OUT_OF_DOMAIN')
  })
  it('isWholeSteps tells what a gauge can show', () => {
    expect(isWholeSteps(508, 254)).toBe(true)
    expect(isWholeSteps(300, 200)).toBe(false)
  })
})

describe('tenthsMm', () => {
  it('tells which tenths cannot come from hundredths of an inch', () => {
    expect(hundredthInchUmFromTenthsMm(3)).toBe(254)
    expect(hundredthInchUmFromTenthsMm(4)).toBeNull()
    expect(hundredthInchUmFromTenthsMm(9)).toBeNull() // no 0.01-in reading becomes 0.9 mm
    expect(umFromTenthsMm(958)).toBe(95_800)
    expect(tenthsMmFromUm(95_758)).toBe(958)
  })
  it('takes a half rounded either way', () => {
    expect(hundredthInchUmFromMm(19_000, 1)).toBe(75 * 254) // 19.05 mm
    expect(hundredthInchUmFromMm(19_100, 1)).toBe(75 * 254)
  })
})

describe('formatAmount', () => {
  it('shows inches with 2 decimals and millimetres with 1', () => {
    expect(formatAmount(um(1_016), 'in')).toBe('0.04')
    expect(formatAmount(um(279_400), 'in', 'en', 'full')).toBe('11.00 in')
    expect(formatAmount(um(6_350), 'mm')).toBe('6.4')
    expect(formatAmount(um(6_350), 'mm', 'es', 'full')).toBe('6,4 mm')
    expect(formatAmount(um(0), 'mm')).toBe('0.0')
  })
  it('shows a trace as T in columns and as a word in sentences, never as 0.00', () => {
    const trace = { amountUm: 0, isTrace: true }
    expect(formatAmount(trace, 'in')).toBe('T')
    expect(formatAmount(trace, 'mm', 'en', 'full')).toBe('trace')
    expect(formatAmount(trace, 'mm', 'es', 'full')).toBe('traza')
  })
})
