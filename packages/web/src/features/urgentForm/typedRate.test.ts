import { describe, expect, it } from 'vitest'
import { typedNumber, typedRate, typedUm, writeRate } from './typedRate.ts'

describe('typed amounts and rates', () => {
  it('0.80 in over 15 minutes is 3.20 in/h', () => {
    expect(writeRate(typedRate(typedUm('0.80', 'in'), 15)!, 'in', 'en')).toBe('3.20 in/h')
  })
  it('12,5 mm over 10 minutes is 75 mm/h, the comma as people type it', () => {
    expect(writeRate(typedRate(typedUm('12,5', 'mm'), 10)!, 'mm', 'es')).toBe('75 mm/h')
    expect(writeRate(typedRate(typedUm('1', 'mm'), 16)!, 'mm', 'es')).toBe('3,8 mm/h')
  })
  it('there is no rate while something is missing, nothing, or no number', () => {
    expect(typedRate(typedUm('', 'mm'), 10)).toBeNull()
    expect(typedRate(typedUm('0', 'mm'), 10)).toBeNull()
    expect(typedRate(typedUm('T', 'mm'), 10)).toBeNull()
    expect(typedRate(typedUm('much', 'mm'), 10)).toBeNull()
    expect(typedRate(typedUm('5', 'mm'), null)).toBeNull()
  })
  it('a unit written behind the number counts', () => {
    expect(typedUm('25.4 mm', 'in')).toBe(25_400)
  })
  it('takes plain positive numbers alone', () => {
    expect(['60', '58,5', '.5', '7.'].map(typedNumber)).toEqual([60, 58.5, 0.5, 7])
    expect(['', '0', '-3', '1e3', '1.2.3', 'x', '5 mph'].map(typedNumber)).toEqual(Array(7).fill(null))
  })
})
