import { describe, expect, it } from 'vitest'
import { readTypedAmount } from './amendView.ts'

describe('readTypedAmount', () => {
  it('reads inches and millimetres with either decimal mark into whole micrometres', () => {
    expect(readTypedAmount('0.40', 'in')).toEqual({ ok: true, amountUm: 10_160, isTrace: false })
    expect(readTypedAmount(' ,4 ', 'mm')).toEqual({ ok: true, amountUm: 400, isTrace: false })
    expect(readTypedAmount('12.7 mm', 'mm')).toEqual({ ok: true, amountUm: 12_700, isTrace: false })
    expect(readTypedAmount('0', 'in')).toEqual({ ok: true, amountUm: 0, isTrace: false })
  })
  it('T is a trace, not zero and not an error', () => {
    expect(readTypedAmount('T', 'in')).toEqual({ ok: true, amountUm: 0, isTrace: true })
  })
  it('asks back about 1,250 and 2.540, refuses words, minus and impossible amounts', () => {
    expect(readTypedAmount('1,250', 'mm')).toEqual({ ok: false, why: 'unclear' })
    expect(readTypedAmount('0.125', 'in')).toMatchObject({ ok: true })
    for (const text of ['', '1.2.3', '-1', 'wet', '1 2'])
      expect(readTypedAmount(text, 'mm')).toEqual({ ok: false, why: 'notAmount' })
    expect(readTypedAmount('90', 'in')).toEqual({ ok: false, why: 'tooLarge' })
    expect(readTypedAmount('74.0', 'in')).toMatchObject({ ok: true })
  })
})
