/** A figure as it may have stood in the observer's note, written in the unit and the manner of what was typed. */
import { decimalMarkOf, type Explanation, type Unit } from '@gaugewright/science'
import { exactText, mmPer } from './figures.ts'
import type { WordingAsk } from './wordingAsk.ts'

export interface Swap {
  /** Null where the explanation does not say which digits, or says others than those of what was typed. */
  originalText: string | null
  swappedText: string
  /** In which the digits of the two are the same: the typed one, or the other where the swap was made before a conversion. */
  unit: Unit
  isAsTyped: boolean
}

/** The two figures whose digits changed places, with as many decimals. The explanation gives the original in millimetres. */
export function swapOf({ detail }: Pick<Explanation, 'detail'>, ask: WordingAsk): Swap {
  const { typedText, typedUnit, finding, language } = ask
  const unknown = { originalText: null, swappedText: typedText, unit: typedUnit, isAsTyped: true }
  if (detail?.kind !== 'transposed') return unknown
  const originalMm = Number(detail.originalText)
  const isSwapIn = (unit: Unit): boolean => hasSameDigits(originalMm, finding.reportedMm, unit)
  if (isSwapIn(typedUnit)) {
    const hundredths = Math.round((originalMm / mmPer[typedUnit]) * 100) / 100
    return { ...unknown, originalText: asTyped(hundredths * mmPer[typedUnit], ask, decimalsOf(typedText)) }
  }
  const unit = typedUnit === 'in' ? 'mm' : 'in'
  if (!isSwapIn(unit)) return unknown
  const mark = decimalMarkOf(language)
  const text = (amountMm: number): string => (amountMm / mmPer[unit]).toFixed(COMPARED_DECIMALS).replace('.', mark)
  return { originalText: text(originalMm), swappedText: text(finding.reportedMm), unit, isAsTyped: false }
}

/**
 * @param leastDecimals  zeros are added up to so many
 * @returns an amount with the decimal mark of what was typed, or of the language where that had none
 */
export function asTyped(amountMm: number, { typedText, typedUnit, language }: WordingAsk, leastDecimals = 0): string {
  const isComma = typedText.includes(',') || (language === 'es' && !typedText.includes('.'))
  const text = withDecimals(exactText(amountMm, typedUnit), leastDecimals)
  return isComma ? text.replace('.', ',') : text
}

function withDecimals(text: string, least: number): string {
  if (decimalsOf(text) >= least) return text
  return `${text}${/[.,]/.test(text) ? '' : '.'}${'0'.repeat(least - decimalsOf(text))}`
}

function decimalsOf(text: string): number {
  return text.split(/[.,]/)[1]?.length ?? 0
}

/** Hundredths are compared: of an inch, in which inch gauges are read; of a millimetre, to which inches are converted. */
const COMPARED_DECIMALS = 2

function hasSameDigits(aMm: number, bMm: number, unit: Unit): boolean {
  const [a, b] = [aMm, bMm].map((amountMm) => String(Math.round((amountMm / mmPer[unit]) * 10 ** COMPARED_DECIMALS)))
  const length = Math.max(a!.length, b!.length)
  const sorted = (text: string): string => text.padStart(length, '0').split('').sort().join('')
  return sorted(a!) === sorted(b!)
}
