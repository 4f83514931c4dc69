import { describe, expect, it } from 'vitest'
import type { AmountStyle } from '../people/observer.ts'
import { OWN_DECIMALS } from './reportTable.ts'
import { typeAmount } from './typeAmount.ts'

const careful: AmountStyle = { leadingZero: true, trailingZeros: true, zero: '0.00', trace: 'T' }
const quick: AmountStyle = { leadingZero: false, trailingZeros: false, zero: '0', trace: 'tr' }

describe('typeAmount', () => {
  it('writes the same amount in each observer’s own way', () => {
    expect(typeAmount(40, false, false, careful, OWN_DECIMALS)).toBe('0.40')
    expect(typeAmount(40, false, false, quick, OWN_DECIMALS)).toBe('.4')
    expect(typeAmount(117, false, false, quick, OWN_DECIMALS)).toBe('1.17')
    expect(typeAmount(340, false, true, careful, OWN_DECIMALS)).toBe('3.4')
    expect(typeAmount(1200, false, true, careful, OWN_DECIMALS)).toBe('12.0')
  })

  it('writes nothing and a trace apart', () => {
    expect(typeAmount(0, false, false, careful, OWN_DECIMALS)).toBe('0.00')
    expect(typeAmount(0, true, false, careful, OWN_DECIMALS)).toBe('T')
    expect(typeAmount(0, false, false, quick, OWN_DECIMALS)).toBe('0')
    expect(typeAmount(0, true, false, quick, OWN_DECIMALS)).toBe('tr')
  })

  it('a slipped point keeps its one decimal only where no figure is lost', () => {
    expect(typeAmount(730, false, false, careful, 1)).toBe('7.3')
    expect(typeAmount(734, false, false, careful, 1)).toBe('7.34')
  })
})
