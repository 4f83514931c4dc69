import { describe, expect, it } from 'vitest'
import { checkGaugeCode, gaugeCodeFromSerial } from './gaugeCode.ts'
import { hasMod37Radix2Check, mod37Radix2Check } from './iso7064.ts'

const base32 = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'

describe('gaugeCodeFromSerial', () => {
  it('gives every serial its own code, all of one shape', () => {
    const codes = Array.from({ length: 30_000 }, (_, serial) => gaugeCodeFromSerial(serial * 6 + (serial % 5)))
    expect(new Set(codes).size).toBe(30_000)
    for (const code of codes)
      if (!/^[A-HJKMNP-TV-Z]\d[0-9A-HJKMNP-TV-Z]{3}$/.test(code)) expect(code).toBe('of the shape')
  })
  it('grows by a character when the short codes are used up', () => {
    expect(gaugeCodeFromSerial(190_079)).toHaveLength(5)
    expect(gaugeCodeFromSerial(190_080)).toHaveLength(6)
    expect(gaugeCodeFromSerial(190_079 + 6_082_560)).toHaveLength(6)
    expect(gaugeCodeFromSerial(190_080 + 6_082_560)).toHaveLength(7)
  })
  it.each([-1, 0.5, Number.NaN, 1e15])('serial %d has no code', (serial) => {
    expect(() => gaugeCodeFromSerial(serial)).toThrow('OUT_OF_DOMAIN')
  })
})

describe('checkGaugeCode', () => {
  it('takes lower case, spaces, hyphens, full-width and look-alike letters for the code they stand for', () => {
    const code = gaugeCodeFromSerial(270) // A0A..: has a zero
    const spelled = `${code.slice(0, 3).toLowerCase()} ${code.slice(3)}`
    expect(checkGaugeCode(spelled)).toEqual({ kind: 'code', code })
    expect(checkGaugeCode(` ${code.replace('0', 'o').slice(0, 2)}-${code.slice(2)}\u00a0`)).toEqual({
      kind: 'code',
      code,
    })
    const wide = [...code].map((character) => String.fromCharCode(character.charCodeAt(0) + 0xfee0)).join('')
    expect(checkGaugeCode(wide)).toEqual({ kind: 'code', code })
    const withOne = gaugeCodeFromSerial(27 * 32 + 5)
    expect(withOne).toMatch(/^A1/)
    expect(checkGaugeCode(withOne.replace('1', 'l'))).toEqual({ kind: 'code', code: withOne })
    expect(checkGaugeCode(withOne.replace('1', 'I'))).toEqual({ kind: 'code', code: withOne })
  })
  it('refuses every code with one wrong character and every code with two neighbours swapped', () => {
    let tried = 0
    for (let serial = 0; serial < 190_000; serial += 3_331) {
      const code = gaugeCodeFromSerial(serial)
      for (let place = 0; place < code.length; place++) {
        for (const other of base32) {
          const wrong = code.slice(0, place) + other + code.slice(place + 1)
          if (wrong === code) continue
          tried++
          if (checkGaugeCode(wrong).kind === 'code') expect(wrong).toBe('refused')
        }
        const [here = '', next = ''] = [code[place], code[place + 1]]
        if (next === '' || here === next) continue
        const swapped = code.slice(0, place) + next + here + code.slice(place + 2)
        tried++
        if (checkGaugeCode(swapped).kind === 'code') expect(swapped).toBe('refused')
      }
    }
    expect(tried).toBeGreaterThan(9_000)
  })
  it('says which rule a code breaks', () => {
    const code = gaugeCodeFromSerial(4_711)
    expect(checkGaugeCode('  ')).toMatchObject({ code: 'GAUGE_CODE_EMPTY' })
    expect(checkGaugeCode(`${code.slice(0, 4)}U`)).toMatchObject({ code: 'GAUGE_CODE_CHARACTER' })
    expect(checkGaugeCode('B2?57')).toHaveProperty('advice', expect.stringContaining('"?"'))
    expect(checkGaugeCode(code.slice(0, 4))).toMatchObject({ code: 'GAUGE_CODE_SHAPE' })
    expect(checkGaugeCode('1A234')).toMatchObject({ code: 'GAUGE_CODE_SHAPE', seen: '1A234' })
    const wrong = `${code.slice(0, 4)}${code.endsWith('7') ? '8' : '7'}`
    expect(checkGaugeCode(wrong)).toMatchObject({ code: 'GAUGE_CODE_CHECK_FAILS', seen: wrong })
  })
})

describe('iso7064', () => {
  it('refuses text outside the system instead of checking it', () => {
    expect(() => mod37Radix2Check('abc')).toThrow('OUT_OF_DOMAIN')
    expect(() => mod37Radix2Check('')).toThrow('OUT_OF_DOMAIN')
    expect(() => mod37Radix2Check('A*')).toThrow('OUT_OF_DOMAIN')
    expect(hasMod37Radix2Check('a1')).toBe(false)
    expect(hasMod37Radix2Check('A')).toBe(false)
  })
})
