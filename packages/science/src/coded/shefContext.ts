/** What a message says of all that follows in it: zone, time, creation, units, qualifier, duration, interval. [SHEF2012] 4.4. */
import type { DecodedShefValue, ShefForm, ShefProblem, ShefProblemCode, ShefSpan } from './shef.ts'
import { sevenOClockCodes, wholeShefCode } from './shefCodes.ts'
import type { ShefField } from './shefLines.ts'
import { applyDateGroup, creationInstant, headerWall, type ShefStep, sevenBefore, stepFrom } from './shefTime.ts'
import { readShefValue } from './shefValue.ts'
import { shefZone, type WallTime, wallOfInstant } from './shefZones.ts'

export interface ShefTerms {
  zone: string
  wall: WallTime
  step: ShefStep | null
  createdAtUtcMs: number | null
  units: 'english' | 'metric'
  qualifier: string
  variable: ShefSpan | null
  interval: ShefStep | null
}

export type Trouble = Omit<ShefProblem, 'severity'> & { severity?: ShefProblem['severity'] }

export function trouble(field: ShefField, code: ShefProblemCode, wanted: string): Trouble {
  return { code, line: field.line, column: field.column, seen: field.text, wanted }
}

export const locationPattern = /^[A-Z0-9_]{3,8}$/

/** Date, zone and the terms they begin with. `tokens`: what stands behind the location, blanks between. */
export function readTerms(
  tokens: readonly ShefField[],
  head: ShefField,
  nowUtcMs: number,
): { terms: ShefTerms; rest: ShefField[] } | Trouble {
  const [date, second] = tokens
  if (date === undefined) return trouble(head, 'SHEF_HEADER', 'a location, a date, and then the data')
  const hasZone = second !== undefined && !/^D[A-Z][A-Z0-9+-]/.test(second.text)
  const zone = shefZone(hasZone ? second.text : 'Z')
  if (zone === null)
    return trouble(
      second ?? head,
      'SHEF_TIME_ZONE',
      'a time zone such as Z, E, C, M, P or CS, or a date group such as DH07',
    )
  const wall = headerWall(date.text, zone, nowUtcMs)
  if (wall === null) return trouble(date, 'SHEF_DATE', 'a real date as mmdd, yymmdd or ccyymmdd')
  const terms: ShefTerms = {
    zone,
    wall,
    step: null,
    createdAtUtcMs: null,
    units: 'english',
    qualifier: 'Z',
    variable: null,
    interval: null,
  }
  return { terms, rest: tokens.slice(hasZone ? 2 : 1) }
}

export function isGroup(text: string): boolean {
  return text[0] === 'D' && text.length > 2
}

/** The terms after a date or data group, or what is wrong with it. */
export function applyGroup(terms: ShefTerms, field: ShefField, nowUtcMs: number): ShefTerms | Trouble {
  const { text } = field
  const parts = /^D([A-Z])([SNHDMYEZ]?)([+-]?)(\d*)$/.exec(text)
  const bad = (wanted: string): Trouble => trouble(field, 'SHEF_DATE_GROUP', wanted)
  const kind = text[1] ?? ''
  if (kind === 'Q') {
    const letter = text[2] ?? ''
    return /^DQ[BDEFGLMNPQRSTVWZ]$/.test(text) ? { ...terms, qualifier: letter } : bad('DQ and one qualifier letter')
  }
  if (kind === 'U') {
    return /^DU[ES]$/.test(text)
      ? { ...terms, units: text[2] === 'S' ? 'metric' : 'english' }
      : bad('DUS for metric or DUE for English units')
  }
  if (parts === null) return bad('a date group such as DH0700, DRD-1, DC, DUS, DQE, DVD03 or DID1')
  const [, , unit = '', sign = '', digits = ''] = parts
  const count = Number(digits) * (sign === '-' ? -1 : 1)
  const isStep = digits.length >= 1 && digits.length <= 2 && unit !== '' && unit !== 'Z'
  if (kind === 'R') {
    if (!isStep) return bad('DR, one of S N H D M Y E, and up to two digits')
    return moved({ ...terms, step: { unit: unit as ShefStep['unit'], count } }, bad)
  }
  if (kind === 'I') {
    const step = { unit: unit as ShefStep['unit'], count }
    return isStep ? { ...terms, interval: step } : bad('DI, one of S N H D M Y E, and up to two digits')
  }
  if (kind === 'V') {
    if (text === 'DVZ') return { ...terms, variable: null }
    if (!isStep || unit === 'E' || sign !== '' || count === 0)
      return bad('DV, one of S N H D M Y, and up to two digits')
    return { ...terms, variable: { unit: unit as ShefSpan['unit'], count } }
  }
  if (kind === 'C') {
    const atMs = sign === '' && unit === '' ? creationInstant(digits, terms.zone, nowUtcMs) : null
    return atMs === null
      ? bad('DC and a real time as mmddhhnn, yymmddhhnn or ccyymmddhhnn')
      : { ...terms, createdAtUtcMs: atMs }
  }
  const wall = sign === '' && unit === '' ? applyDateGroup(terms.wall, kind, digits) : null
  if (wall === null) return bad('a time that exists, in pairs of digits: DH0700, DM061207, DJ163')
  return moved({ ...terms, wall, step: null }, bad)
}

function moved(terms: ShefTerms, bad: (wanted: string) => Trouble): ShefTerms | Trouble {
  return stepFrom(terms.wall, terms.zone, terms.step) === null ? bad('a time that exists') : terms
}

export function isTrouble(answer: ShefTerms | Trouble | DecodedShefValue | { rest: unknown }): answer is Trouble {
  return 'wanted' in answer
}

/** A value under its terms. `stepCount`: how many intervals after their time. */
export function valueUnder(
  terms: ShefTerms,
  of: { form: ShefForm; location: string; isRevision: boolean; code: ShefField; value: ShefField; stepCount: number },
): { value: DecodedShefValue; warning: Trouble | null } | Trouble {
  const { code, value: field } = of
  const whole = wholeShefCode(code.text)
  if (whole === null) return trouble(code, 'SHEF_CODE', 'a parameter code of 2 to 7 letters such as PP, SD or PPDRZZZ')
  const read = readShefValue(field.text, code.text.slice(0, 2), terms.units)
  if (read.kind === 'problem') return trouble(field, read.code, read.wanted)
  if (whole[2] === 'V' && terms.variable === null) {
    return trouble(code, 'SHEF_DURATION', 'a group such as DVD03 before a code with the duration V')
  }
  const isSeven = sevenOClockCodes.has(code.text)
  if (isSeven && (terms.zone === 'UTC' || of.form === 'E' || terms.step !== null)) {
    return trouble(code, 'SHEF_CODE', `${code.text} with a local time zone, outside .E and without DR`)
  }
  const atMs = timeOf(terms, of.stepCount)
  if (atMs === null) return trouble(field, 'SHEF_INTERVAL', 'an interval that leads to a time that exists')
  const observedAtUtcMs = isSeven ? sevenBefore(atMs, terms.zone, false) : atMs
  if (observedAtUtcMs === null) return trouble(field, 'SHEF_INTERVAL', 'a time that exists')
  const value: DecodedShefValue = {
    location: of.location,
    observedAtUtcMs,
    createdAtUtcMs: terms.createdAtUtcMs,
    code: whole,
    variable: whole[2] === 'V' ? terms.variable : null,
    sinceUtcMs: whole[2] === 'P' ? sevenBefore(observedAtUtcMs, terms.zone, true) : null,
    datum: read.datum,
    units: terms.units,
    qualifier: read.qualifier ?? terms.qualifier,
    isRevision: of.isRevision,
    comment: field.comment,
    form: of.form,
    line: field.line,
    column: field.column,
    text: field.text,
  }
  const wanted = 'a decimal point; hundredths are read without it'
  return { value, warning: read.wasHundredths ? trouble(field, 'SHEF_DECIMAL_MISSING', wanted) : null }
}

function timeOf(terms: ShefTerms, stepCount: number): number | null {
  if (terms.interval === null || stepCount === 0) return stepFrom(terms.wall, terms.zone, terms.step)
  if (terms.step === null) return stepFrom(terms.wall, terms.zone, terms.interval, stepCount)
  const baseMs = stepFrom(terms.wall, terms.zone, terms.step)
  if (baseMs === null) return null
  const wall = wallOfInstant(baseMs, terms.zone)
  return stepFrom(wall, terms.zone, terms.interval, stepCount)
}
