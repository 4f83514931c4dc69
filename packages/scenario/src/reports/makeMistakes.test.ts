import { describe, expect, it } from 'vitest'
import { Random } from '../random/random.ts'
import { swapDigits, wrongUnit } from './makeMistakes.ts'

describe('mistakes', () => {
  it('swapDigits changes two neighbouring figures round and leaves like figures alone', () => {
    const random = new Random(2, 'swap')
    expect(swapDigits(81, random)).toBe(18)
    expect(swapDigits(55, random)).toBe(55)
    for (let draw = 0; draw < 20; draw++) expect([217, 172]).toContain(swapDigits(127, random))
  })

  it('wrongUnit writes 0.28 in as 7.1 in the inch field, and 7.2 mm as 0.28 in the millimetre field', () => {
    expect(wrongUnit(28, false)).toBe(710)
    expect(wrongUnit(720, true)).toBe(28)
  })
})
