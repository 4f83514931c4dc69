/**
 * A number with its unit, held against what a gauge can show and hold and what has ever fallen; and the answers that
 * come of it. A step of parseAmount.ts.
 */
import { decimalMarkOf, type Language } from '../units/formatAmount.ts'
import { usualResolutionUm } from '../units/roundUm.ts'
import { hundredthInchUmFromMm } from '../units/tenthsMm.ts'
import { amountAdvice } from './amountAdvice.ts'
import type { AmountAnswer, AmountChoice, AmountProblemCode, AmountQuestionCode } from './amountAnswer.ts'
import { type ExactNumber, exactFromFraction, roughlyTimes, wholeTimes } from './exactNumber.ts'
import type { Unit } from './reading.ts'
import type { DecimalMark } from './readNumber.ts'

/** Most ever measured in 24 h: 1 825 mm, Foc-Foc, La Réunion, 1966. Source: the WMO archive of extremes. */
export const recordDayUm = 1_825_000

/** Digits from which a figure was written by a program's binary arithmetic (0.30000000000000004). */
const BINARY_DECIMALS = 12

/** What parseAmount was asked, and the text as typed. */
export interface Terms {
  seen: string
  unit: Unit
  decimalMark?: DecimalMark
  resolutionUm?: number | null
  finer?: 'ask' | 'keep' | 'inchHundredths'
  capacityUm: number | null
  dayCount?: number
  confirmed?: boolean
  language?: Language
}

/** The amount, or the question or problem that its size or its fineness raises. `value` is at least 0, in `terms.unit`. */
export function weighAmount(value: ExactNumber, terms: Terms): AmountAnswer {
  const { unit } = terms
  const roughUm = roughlyTimes(value, perUnit(unit))
  if (roughUm > recordDayUm * (terms.dayCount ?? 1)) return problem('AMOUNT_ABOVE_RECORD', terms)
  const amountUm = wholeUm(value, terms)
  if (!terms.confirmed && terms.capacityUm !== null && roughUm > terms.capacityUm) {
    return question('AMOUNT_ABOVE_CAPACITY', terms, belowCapacity(value, terms))
  }
  if (amountUm === null) {
    const choices = [...stepsAround(roughUm, terms), ...hundredthsTypedAsMm(value, terms)]
    return question('AMOUNT_FINER_THAN_GAUGE', terms, choices)
  }
  return { kind: 'amount', amountUm, isTrace: false, unit }
}

/** Whole micrometres where the gauge's step, or the way the sheet was made, allows the figure; otherwise null. */
function wholeUm(value: ExactNumber, terms: Terms): number | null {
  const roughUm = roughlyTimes(value, perUnit(terms.unit))
  const stepUm = stepOf(terms)
  if (terms.finer === 'inchHundredths' && terms.unit === 'mm') {
    const hundredthsUm = hundredthInchUmFromMm(roughUm, value.decimals)
    if (hundredthsUm !== null) return hundredthsUm
    return terms.confirmed ? wholeTimes(value, perUnit(terms.unit)) : null
  }
  if (value.decimals >= BINARY_DECIMALS) {
    const nearestUm = Math.round(roughUm / stepUm) * stepUm
    if (Math.abs(nearestUm - roughUm) < 1e-6) return nearestUm
  }
  const exactUm = wholeTimes(value, perUnit(terms.unit))
  if (exactUm === null) return null
  return terms.finer === 'keep' || terms.confirmed || exactUm % stepUm === 0 ? exactUm : null
}

/** What an amount above the gauge's capacity could have been: a lost point, the other unit, or truly that much. */
function belowCapacity(value: ExactNumber, terms: Terms): AmountChoice[] {
  const capacityUm = terms.capacityUm ?? Number.POSITIVE_INFINITY
  const other = terms.unit === 'in' ? 'mm' : 'in'
  const candidates = [
    ...[10n, 100n].map((times) => ({ value: { ...value, denominator: value.denominator * times }, unit: terms.unit })),
    { value, unit: other } as const,
  ]
  const slips = candidates.flatMap((candidate) => {
    const um = wholeTimes(candidate.value, perUnit(candidate.unit))
    const fits = um !== null && um <= capacityUm && um % stepOf({ ...terms, unit: candidate.unit }) === 0
    return fits ? choicesFor(candidate.value, candidate.unit, terms) : []
  })
  return [...slips, ...choicesFor(value, terms.unit, terms)]
}

/** `0.25` in a sheet of millimetres: more than the gauge shows, unless it was read in inches. */
function hundredthsTypedAsMm(value: ExactNumber, terms: Terms): AmountChoice[] {
  if (terms.unit !== 'mm' || value.decimals !== 2 || terms.finer === 'inchHundredths') return []
  const um = wholeTimes(value, perUnit('in'))
  return um !== null && um <= (terms.capacityUm ?? recordDayUm) ? choicesFor(value, 'in', terms) : []
}

function stepsAround(roughUm: number, terms: Terms): AmountChoice[] {
  const isArchive = terms.finer === 'inchHundredths' && terms.unit === 'mm'
  const stepUm = isArchive ? 254 : stepOf(terms)
  const belowUm = Math.floor(roughUm / stepUm) * stepUm
  if (belowUm === 0) {
    // More than nothing and less than a step: wet, so not a zero.
    const trace = { kind: 'amount', text: 'T', amountUm: 0, isTrace: true, unit: terms.unit } as const
    return [trace, ...choicesFor(stepUm, terms.unit, terms)]
  }
  return [belowUm, belowUm + stepUm].flatMap((um) => choicesFor(um, terms.unit, terms))
}

/**
 * The number (in `unit`) or the whole micrometres as choices: one, or the two steps beside it where it is no whole
 * number of micrometres; none where no gauge has ever caught as much.
 */
export function choicesFor(value: ExactNumber | number, unit: Unit, terms: Terms): AmountChoice[] {
  const inUnit = { ...terms, unit }
  const amountUm = typeof value === 'number' ? value : wholeTimes(value, perUnit(unit))
  if (amountUm === null) return stepsAround(roughlyTimes(value as ExactNumber, perUnit(unit)), inUnit)
  if (amountUm > recordDayUm * (terms.dayCount ?? 1)) return []
  return [{ kind: 'amount', text: `${decimalText(amountUm, inUnit)} ${unit}`, amountUm, isTrace: false, unit }]
}

/** Choices for several numbers; those that the gauge cannot show are left out where two or more are that it can. */
export function likelyChoices(values: readonly ExactNumber[], terms: Terms): AmountChoice[] {
  const shown = values.filter((value) => {
    const um = wholeTimes(value, perUnit(terms.unit))
    return um !== null && um % stepOf(terms) === 0
  })
  return (shown.length >= 2 ? shown : values).flatMap((value) => choicesFor(value, terms.unit, terms))
}

export function question(code: AmountQuestionCode, terms: Terms, choices: AmountChoice[]): AmountAnswer {
  const distinct = choices.filter((choice, index) => choices.findIndex(({ text }) => text === choice.text) === index)
  if (distinct.length === 0) return problem('AMOUNT_ABOVE_RECORD', terms)
  const advice = amountAdvice(code, terms.seen, distinct, limitText(code, terms), terms.language ?? 'en')
  return { kind: 'question', code, seen: terms.seen, advice, choices: distinct }
}

export function problem(code: AmountProblemCode, terms: Terms): AmountAnswer {
  const advice = amountAdvice(code, terms.seen, [], limitText(code, terms), terms.language ?? 'en')
  return { kind: 'problem', code, seen: terms.seen, advice }
}

function limitText(code: AmountQuestionCode | AmountProblemCode, terms: Terms): string {
  const text = (um: number) => `${decimalText(um, terms)} ${terms.unit}`
  if (code === 'AMOUNT_ABOVE_CAPACITY') return text(terms.capacityUm ?? 0)
  if (code === 'AMOUNT_ABOVE_RECORD') return `${recordDayUm / 1000} mm in a day`
  if (code === 'AMOUNT_UNREADABLE') return decimalText(terms.unit === 'in' ? 6_350 : 6_400, terms)
  return text(stepOf(terms))
}

/** The gauge's step in the unit of the text: its own where that is a step of the unit, else 0.01 in or 0.1 mm. */
export function stepOf(terms: { unit: Unit; resolutionUm?: number | null }): number {
  const usualUm = usualResolutionUm(terms.unit)
  const ownUm = terms.resolutionUm ?? usualUm
  return ownUm % usualUm === 0 || usualUm % ownUm === 0 ? ownUm : usualUm
}

/** Exact decimal, with at least the decimals of the unit; up to the nearest 1e-6 in where inches have no end. */
function decimalText(amountUm: number, terms: Terms): string {
  const least = terms.unit === 'in' ? 2 : 1
  const exact = exactFromFraction(BigInt(amountUm), BigInt(perUnit(terms.unit)))
  if (exact === null) return (amountUm / perUnit(terms.unit)).toFixed(6).replace('.', markOf(terms))
  const decimals = Math.max(least, exact.decimals)
  const digits = String(exact.numerator * 10n ** BigInt(decimals - exact.decimals)).padStart(decimals + 1, '0')
  return `${digits.slice(0, -decimals)}${markOf(terms)}${digits.slice(-decimals)}`
}

/** The mark in which choices are written: the sheet's, or that of the language. */
function markOf(terms: Terms): '.' | ',' {
  const { decimalMark = 'either', language = 'en' } = terms
  return decimalMark === 'either' ? decimalMarkOf(language) : decimalMark
}

function perUnit(unit: Unit): number {
  return unit === 'in' ? 25_400 : 1_000
}
