/**
 * What an observer, a sheet or a program typed, read as an amount: a clear answer or a clear question, never a guess,
 * and never a silent rounding. Number grammar is in readNumber.ts, words and units in amountWords.ts, wording in
 * amountAdvice.ts, limits in weighAmount.ts. No dates, no flags: those are columns of their own.
 */
import type { Language } from '../units/formatAmount.ts'
import { usualResolutionUm } from '../units/roundUm.ts'
import { hundredthInchUmFromMm } from '../units/tenthsMm.ts'
import type { AmountAnswer } from './amountAnswer.ts'
import { amountWord, splitUnit, type WrittenUnit } from './amountWords.ts'
import { plainText } from './plainText.ts'
import type { Unit } from './reading.ts'
import { type DecimalMark, type NumberAnswer, readNumber } from './readNumber.ts'
import { inchTube, metricTube, sumFills } from './sumFills.ts'
import { choicesFor, likelyChoices, problem, question, stepOf, type Terms, weighAmount } from './weighAmount.ts'

export interface ParseAmountOptions {
  /** Unit of the sheet or network. A unit written behind the number goes before it. */
  unit: Unit
  /** Decimal mark of the sheet; `either` (the default) asks where `1,250` or `1.250` could be a thousand and more. */
  decimalMark?: DecimalMark
  /** Smallest step that the gauge shows, in the sheet's unit. Default 0.01 in or 0.1 mm. */
  resolutionUm?: number | null
  /**
   * What to do with an amount finer than that step. `ask` (the default): a question. `keep`: take it as written, if it
   * is whole micrometres. `inchHundredths`: for archives whose millimetres were hundredths of an inch: give back the
   * hundredths (`28.45` is 1.12 in = 28.448 mm), ask where there are none.
   */
  finer?: 'ask' | 'keep' | 'inchHundredths'
  /** What the gauge holds; more is asked about. Default 11 in; null where unknown. */
  capacityUm?: number | null
  /** Observing days that the amount covers, for the limit of what is possible. Default 1. */
  dayCount?: number
  /** The person has seen the question and says that it is so: capacity and step are not asked about again. */
  confirmed?: boolean
  /** Further marks for "no reading" in a sheet, such as `-9999`. Compared after trimming and in lower case. */
  missingMarks?: readonly string[]
  /** Of the advice. Default English. */
  language?: Language
}

const DEFAULT_CAPACITY_UM = 279_400
const MAX_LENGTH = 60

/** Read a typed amount. Any text gives an answer; nothing is thrown. Time O(length), fast for plain numbers. */
export function parseAmount(text: string, options: ParseAmountOptions): AmountAnswer {
  const capacityUm = options.capacityUm === undefined ? DEFAULT_CAPACITY_UM : options.capacityUm
  if (options.missingMarks?.includes(text)) return { kind: 'missing' }
  const quick = plainNumber(text, options, capacityUm)
  if (quick >= 0) return { kind: 'amount', amountUm: quick, isTrace: false, unit: options.unit }
  const plain = plainText(text)
  const terms: Terms = { ...options, seen: seenText(text), capacityUm }
  if (plain === '' || options.missingMarks?.some((mark) => plainText(mark) === plain)) return { kind: 'missing' }
  if (plain.length > MAX_LENGTH) return problem('AMOUNT_UNREADABLE', terms)
  return readWord(plain, terms) ?? readSum(plain, terms) ?? readQuantity(plain, terms)
}

/** Words instead of a number, and words beside one (`0.00 T`, `<0.01`). Null where there is none. */
function readWord(plain: string, terms: Terms): AmountAnswer | null {
  const { unit } = terms
  const trace = { kind: 'amount', amountUm: 0, isTrace: true, unit } as const
  const zero = { kind: 'amount', amountUm: 0, isTrace: false, unit } as const
  switch (amountWord(plain)) {
    case 'trace':
      return trace
    case 'zero':
      return zero
    case 'missing':
      return { kind: 'missing' }
    case 'zeroOrMissing': {
      return question('AMOUNT_ZERO_OR_MISSING', terms, [
        { ...zero, text: '0' },
        { kind: 'missing', text: '' },
      ])
    }
  }
  const beside = /^(.*[\d.,]) ?(?:t|tr|trace|traza)\.?$/.exec(plain)?.[1] ?? /^< ?(.*)$/.exec(plain)?.[1]
  if (beside === undefined) return null
  const amount = readQuantity(beside, { ...terms, confirmed: true })
  if (amount.kind !== 'amount') return problem('AMOUNT_UNREADABLE', terms)
  const isBelowStep = plain.startsWith('<') && amount.amountUm <= usualResolutionUm(amount.unit)
  if (amount.amountUm === 0 || isBelowStep) return { ...trace, unit: amount.unit }
  const choices = choicesFor(amount.amountUm, amount.unit, terms)
  return question('AMOUNT_TRACE_UNCLEAR', terms, [{ ...trace, text: 'T' }, ...choices])
}

/** `1.00+0.97+0.88+0.92`: the fills of an overflow, typed in a row. Null where there is no sum. */
function readSum(plain: string, terms: Terms): AmountAnswer | null {
  if (!/[\d.,"a-z] ?\+ ?[\d.,]/.test(plain) || /e\+\d/.test(plain)) return null
  const fills = []
  for (const part of plain.split('+')) {
    const fill = readQuantity(part.trim(), terms)
    if (fill.kind !== 'amount' || fill.unit !== terms.unit) return problem('AMOUNT_UNREADABLE', terms)
    fills.push(fill)
  }
  const sum = sumFills(fills, terms.unit === 'in' ? inchTube : metricTube, terms.language)
  if (sum.kind === 'problem') return { kind: 'problem', code: sum.code, seen: terms.seen, advice: sum.advice }
  return question('AMOUNT_IS_A_SUM', terms, choicesFor(sum.amountUm, terms.unit, terms))
}

/** A number, with a sign or a unit perhaps. */
function readQuantity(plain: string, terms: Terms): AmountAnswer {
  const { number, unit: written } = splitUnit(plain)
  const [, sign = '', body = ''] = /^([+-]?) ?(.*)$/.exec(number) ?? []
  const answer = readNumber(body, terms.decimalMark ?? 'either')
  if (answer.kind === 'unreadable') {
    return problem(answer.why === 'twoPoints' ? 'AMOUNT_TWO_POINTS' : 'AMOUNT_UNREADABLE', terms)
  }
  if (sign === '-' && !isZero(answer)) return problem('AMOUNT_NEGATIVE', terms)
  const inUnit = { ...terms, unit: unitOf(written) ?? terms.unit }
  if (answer.kind === 'unclear') {
    const choices = likelyChoices(
      answer.candidates.map((value) => scaled(value, written)),
      inUnit,
    )
    const code = {
      decimal: 'AMOUNT_DECIMAL_UNCLEAR',
      fraction: 'AMOUNT_FRACTION_UNCLEAR',
      letters: 'AMOUNT_LETTER_FOR_DIGIT',
    } as const
    return question(code[answer.why], inUnit, choices)
  }
  if (written === 'cm' && !isZero(answer)) {
    const asCentimetres = choicesFor(scaled(answer.value, 'cm'), 'mm', inUnit)
    return question('AMOUNT_UNIT_UNUSUAL', inUnit, [...asCentimetres, ...choicesFor(answer.value, 'mm', inUnit)])
  }
  return weighAmount(scaled(answer.value, written), inUnit)
}

type Exact = Extract<NumberAnswer, { kind: 'number' }>['value']

function isZero(answer: NumberAnswer): boolean {
  return answer.kind === 'number' && answer.value.numerator === 0n
}

function unitOf(written: WrittenUnit | null): Unit | null {
  return written === 'hundredths' ? 'in' : written === 'cm' ? 'mm' : written
}

function scaled(value: Exact, written: WrittenUnit | null): Exact {
  if (written === 'cm') return { ...value, numerator: value.numerator * 10n, decimals: Math.max(0, value.decimals - 1) }
  if (written !== 'hundredths') return value
  return { ...value, denominator: value.denominator * 100n, decimals: value.decimals + 2 }
}

function seenText(text: string): string {
  const trimmed = text.trim()
  return trimmed.length > MAX_LENGTH ? `${trimmed.slice(0, MAX_LENGTH)}…` : trimmed
}

/**
 * The micrometres of a text of a few ASCII digits with at most two behind a point, within the gauge's step and
 * capacity; -1 for every other text, which takes the careful way. Gives what the careful way gives (a law says so).
 */
function plainNumber(text: string, options: ParseAmountOptions, capacityUm: number | null): number {
  const { length } = text
  if (length === 0 || length > 7 || options.decimalMark === ',') return -1
  let value = 0
  let pointAt = -1
  for (let index = 0; index < length; index++) {
    const digit = text.charCodeAt(index) - 48
    if (digit === -2 && pointAt < 0) pointAt = index
    else if (digit >= 0 && digit <= 9) value = value * 10 + digit
    else return -1
  }
  const decimals = pointAt < 0 ? 0 : length - pointAt - 1
  if (decimals > 2 || (pointAt < 0 && length > 1 && text.startsWith('0')) || (pointAt >= 0 && decimals === 0)) return -1
  const perStep = (options.unit === 'in' ? 25_400 : 1_000) / (decimals === 2 ? 100 : decimals === 1 ? 10 : 1)
  const amountUm = value * perStep
  if (amountUm > (capacityUm ?? DEFAULT_CAPACITY_UM)) return -1
  if (options.finer === 'inchHundredths' && options.unit === 'mm')
    return hundredthInchUmFromMm(amountUm, decimals) ?? -1
  const stepUm = stepOf(options)
  return options.finer === 'keep' || amountUm % stepUm === 0 ? amountUm : -1
}
