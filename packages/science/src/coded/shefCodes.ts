/** Parameter codes: two letters of the element, then duration, type, source, extremum, probability. [SHEF2012] 5.3.4, Tables 2, 7. */

/** Elements whose duration is not instantaneous where none is given. [SHEF2012] Table 7. */
const usualDurations: Readonly<Record<string, string>> = {
  AT: 'D',
  AU: 'D',
  AW: 'D',
  EA: 'D',
  EM: 'D',
  EP: 'D',
  ER: 'D',
  ET: 'D',
  EV: 'D',
  LC: 'D',
  PP: 'D',
  PR: 'D',
  QC: 'D',
  QV: 'D',
  RI: 'D',
  RP: 'D',
  RT: 'D',
  SF: 'D',
  TC: 'S',
  TF: 'S',
  TH: 'S',
  UC: 'D',
  UL: 'D',
  XG: 'J',
  XP: 'Q',
}

/** Two letters that stand for a whole code. [SHEF2012] Table 2. */
const standFor: Readonly<Record<string, string>> = {
  AD: 'ADZZZZZ',
  HN: 'HGIRZNZ',
  HX: 'HGIRZXZ',
  HY: 'HGIRZZZ',
  PF: 'PPTCFZZ',
  PY: 'PPDRZZZ',
  QN: 'QRIRZNZ',
  QX: 'QRIRZXZ',
  QY: 'QRIRZZZ',
  TN: 'TAIRZNZ',
  TX: 'TAIRZXZ',
}

/** Codes whose value is that of 07:00 local, at or before the time given. */
export const sevenOClockCodes: ReadonlySet<string> = new Set(['HY', 'PY', 'QY'])

export const durationLetters = 'IUEGCJHBTFQAKLDWNMYZSRVPX'
/** O and I are never used; N is read as no data level (Table 10). */
export const qualifierLetters = 'BDEFGLMNPQRSTVWZ'

const pattern = /^[A-Z]{2}([A-Z]([A-Z0-9]{1,4})?)?$/

/** All seven letters of a code, or null where it is none. */
export function wholeShefCode(code: string): string | null {
  if (!pattern.test(code)) return null
  const stands = standFor[code]
  if (stands !== undefined) return stands
  const element = code.slice(0, 2)
  const given = code[2] ?? 'Z'
  if (!durationLetters.includes(given)) return null
  const duration = given === 'Z' && element !== 'AD' ? (usualDurations[element] ?? 'I') : given
  const type = code[3] ?? 'R'
  return `${element}${duration}${type === 'Z' && code.length < 7 ? 'R' : type}${code.slice(4).padEnd(3, 'Z')}`
}

/** The fewest letters that stand for a whole code. */
export function shortShefCode(code: string): string {
  for (let length = 2; length < 7; length++) {
    const short = code.slice(0, length)
    if (!sevenOClockCodes.has(short) && wholeShefCode(short) === code) return short
  }
  return code
}
