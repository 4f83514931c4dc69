/**
 * Check characters of ISO 7064, pure system MOD 37-2 (letters and digits, one check character): every single wrong
 * character and every swap of two neighbours is found. Characters count 0-9, A-Z as 0-35; the check may also be `*`,
 * 36. Source: [ISO7064]. Published examples: test/published/iso7064.test.ts.
 */
import { ScienceError } from '../error.ts'

const checkCharacters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*'
const MODULUS = 37
const RADIX = 2

/**
 * The check character for a text of capitals and digits.
 * @throws {ScienceError} OUT_OF_DOMAIN for any other character, or an empty text
 */
export function mod37Radix2Check(text: string): string {
  if (text === '') throw new ScienceError('OUT_OF_DOMAIN', 'an empty text has no check character')
  let sum = 0
  for (const character of text) sum = ((sum + characterValue(character)) * RADIX) % MODULUS
  return checkCharacters.charAt((MODULUS + 1 - sum) % MODULUS)
}

/** True where the last character is the check of those before it. False for characters outside the system. */
export function hasMod37Radix2Check(text: string): boolean {
  if (!/^[0-9A-Z]+[0-9A-Z*]$/.test(text)) return false
  return mod37Radix2Check(text.slice(0, -1)) === text.slice(-1)
}

function characterValue(character: string): number {
  const value = checkCharacters.indexOf(character)
  if (value < 0 || value > 35) throw new ScienceError('OUT_OF_DOMAIN', `"${character}" is not a capital or a digit`)
  return value
}
