/**
 * ISO/IEC 7064:2003, Check character systems, pure system MOD 37-2. Examples from memory: the donation number of the
 * blood-labelling standard (ISBT 128). Others by the definition and by hand.
 */
import { describe, expect, it } from 'vitest'
import { hasMod37Radix2Check, mod37Radix2Check } from '../../src/reading/iso7064.ts'

describe('ISO 7064 MOD 37-2', () => {
  it('gives G123489654321 the check character Y (ISBT 128 example, from memory)', () => {
    expect(mod37Radix2Check('G123489654321')).toBe('Y')
    expect(hasMod37Radix2Check('G123489654321Y')).toBe(true)
  })

  it('makes the weighted sum of all characters, weights 1, 2, 4, … from the right, leave 1 when divided by 37', () => {
    // The definition of a pure system, applied directly and not by the recursive method of the code.
    const alphabet = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*'
    for (const text of ['A12425GABC1234002', '0794', 'B7K2', 'Z', 'ZZZZZZ', '000001']) {
      const whole = text + mod37Radix2Check(text)
      let weighted = 0
      for (const [place, character] of [...whole].reverse().entries()) {
        weighted += alphabet.indexOf(character) * 2 ** place
      }
      expect(weighted % 37).toBe(1)
    }
  })

  it('finds the sum by hand: for "A5", 10·4 + 5·2 = 50, so the check is (1 − 50) mod 37 = 25, P', () => {
    expect(mod37Radix2Check('A5')).toBe('P')
  })
})
