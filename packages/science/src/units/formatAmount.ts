/**
 * Amounts as text for people: inches with 2 decimals, millimetres with 1, halves up. A trace is never shown as a zero.
 * Exact figures for files are not made here: a file holds what was typed, or whole micrometres.
 */
import type { Amount, Unit } from '../reading/reading.ts'
import { roundUm, usualResolutionUm } from './roundUm.ts'

export type Language = 'en' | 'es'

/** `number`: `0.25`, `T`, for columns whose head states the unit. `full`: `0.25 in`, `trace`, for sentences. */
export type AmountForm = 'number' | 'full'

const traceWord: Record<Language, string> = { en: 'trace', es: 'traza' }

/**
 * @param amount   whole micrometres, at least 0
 * @returns `0.25`, `T`, `6.4 mm`, `6,4 mm` (Spanish), `trace`, `traza`. Parsing the result gives the amount back
 *          wherever the unit can show it. Read more in test/laws/amount.laws.test.ts.
 * @throws {ScienceError} OUT_OF_DOMAIN for a negative or fractional number of micrometres
 */
export function formatAmount(
  amount: Amount,
  unit: Unit,
  language: Language = 'en',
  form: AmountForm = 'number',
): string {
  if (amount.isTrace && amount.amountUm === 0) return form === 'number' ? 'T' : traceWord[language]
  const stepUm = usualResolutionUm(unit)
  const steps = roundUm(amount.amountUm, stepUm) / stepUm
  const number = placeDecimal(steps, unit === 'in' ? 2 : 1, decimalMarkOf(language))
  return form === 'number' ? number : `${number} ${unit}`
}

/** The decimal mark that {@link formatAmount} writes. */
export function decimalMarkOf(language: Language): '.' | ',' {
  return language === 'es' ? ',' : '.'
}

function placeDecimal(steps: number, decimals: number, mark: string): string {
  const digits = String(steps).padStart(decimals + 1, '0')
  return `${digits.slice(0, -decimals)}${mark}${digits.slice(-decimals)}`
}
