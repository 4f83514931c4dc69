/**
 * Codes of gauges: short, easy to say and to copy, and refused when mistyped. Made of the 32 characters left when I, L,
 * O and U are taken from digits and capitals, so that a typed O can only be a zero and an I or L a one. The last is
 * the ISO 7064 MOD 37-2 check of the others. A code begins with a letter and a digit, so that no spreadsheet takes it
 * for a number or a date. Codes that came with an imported network are not these and are kept as they are.
 */
import { ScienceError } from '../error.ts'
import { hasMod37Radix2Check, mod37Radix2Check } from './iso7064.ts'

export type GaugeCode = string & { readonly brand: 'GaugeCode' }

export type GaugeCodeAnswer =
  | { kind: 'code'; code: GaugeCode }
  | { kind: 'problem'; code: GaugeCodeProblemCode; seen: string; advice: string }

export type GaugeCodeProblemCode =
  | 'GAUGE_CODE_EMPTY'
  | 'GAUGE_CODE_CHARACTER'
  | 'GAUGE_CODE_SHAPE'
  | 'GAUGE_CODE_CHECK_FAILS'

const base32 = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'
const letters = 'ABCDEFGHJKMNPQRSTVWXYZ'
/** Of the 32 characters for the last place before the check, at least this many give a check among the 32. */
const LAST_PLACE_CHOICES = 27
const SHORTEST = 5
const LONGEST = 8

/**
 * The code of a serial number. 190 080 codes have 5 characters, later ones 6, 7 and 8; no two serials share a code.
 * @param serial whole, from 0
 * @throws {ScienceError} OUT_OF_DOMAIN when negative, fractional or beyond the codes of 8 characters
 */
export function gaugeCodeFromSerial(serial: number): GaugeCode {
  let rest = serial
  for (let length = SHORTEST; Number.isSafeInteger(rest) && rest >= 0 && length <= LONGEST; length++) {
    const count = codesOfLength(length)
    if (rest < count) return codeAt(rest, length)
    rest -= count
  }
  throw new ScienceError('OUT_OF_DOMAIN', `${serial} is not the serial number of a gauge code`)
}

/**
 * A typed code, put into its one spelling: capitals, no spaces or hyphens, O as 0, I and L as 1.
 * @returns the code, or which rule it breaks
 */
export function checkGaugeCode(text: string): GaugeCodeAnswer {
  const seen = text.trim()
  const code = seen
    .replace(/[\uFF01-\uFF5E]/gu, (wide) => String.fromCharCode(wide.charCodeAt(0) - 0xfee0))
    .replace(/[\s\u00A0\u3000\u2010-\u2015\u2212_-]/gu, '')
    .toUpperCase()
    .replaceAll('O', '0')
    .replace(/[IL]/g, '1')
  const refuse = (problemCode: GaugeCodeProblemCode, advice: string): GaugeCodeAnswer => ({
    kind: 'problem',
    code: problemCode,
    seen,
    advice,
  })
  if (code === '')
    return refuse('GAUGE_CODE_EMPTY', 'Type the code of the gauge, for instance as it stands on its label.')
  const stranger = [...code].find((character) => !base32.includes(character))
  if (stranger !== undefined) {
    return refuse('GAUGE_CODE_CHARACTER', `"${stranger}" is in no gauge code. Look at the code again.`)
  }
  if (code.length < SHORTEST || code.length > LONGEST || !/^[A-Z]\d/.test(code)) {
    const advice = `A gauge code has ${SHORTEST} to ${LONGEST} characters, first a letter, then a digit.`
    return refuse('GAUGE_CODE_SHAPE', `${advice} Look at the code again.`)
  }
  if (!hasMod37Radix2Check(code)) {
    const advice = `The last character of "${code}" does not fit the others: one of them is wrong, or two are swapped.`
    return refuse('GAUGE_CODE_CHECK_FAILS', advice)
  }
  return { kind: 'code', code: code as GaugeCode }
}

function codesOfLength(length: number): number {
  return letters.length * 10 * 32 ** (length - 4) * LAST_PLACE_CHOICES
}

/** The code of this length with this rank: letter, digit, any, one whose check is among the 32, check. */
function codeAt(rank: number, length: number): GaugeCode {
  let rest = Math.floor(rank / LAST_PLACE_CHOICES)
  let middle = ''
  for (let place = 0; place < length - 4; place++) {
    middle = base32.charAt(rest % 32) + middle
    rest = Math.floor(rest / 32)
  }
  const stem = letters.charAt(Math.floor(rest / 10)) + String(rest % 10) + middle
  const codes = [...base32].map((last) => stem + last + mod37Radix2Check(stem + last))
  return codes.filter((code) => base32.includes(code.slice(-1)))[rank % LAST_PLACE_CHOICES] as GaugeCode
}
