/** Amounts on the observer's page: typed as whole steps of the last place, so that the point cannot be lost. */
import { formatAmount, inchTube, type Language, metricTube, type TubeSizes, type Unit } from '@gaugewright/science'
import type { MyWords } from '../../words/myWords.ts'

/** The last place that is typed: hundredths of an inch, tenths of a millimetre. */
export const placeUm = { in: 254, mm: 100 } as const
export const tubeOf: Record<Unit, TubeSizes> = { in: inchTube, mm: metricTube }
const decimals = { in: 2, mm: 1 } as const

export interface TypedAmount {
  amountUm: number
  isTrace: boolean
}

/** A digit typed behind those that stand there: 4, then 0, is 0.40 in. More than the gauge could hold is not taken. */
export function pushDigit(places: number, digit: number, unit: Unit): number {
  const next = places * 10 + digit
  return next * placeUm[unit] > tubeOf[unit].capacityUm * 10 ? places : next
}

export function popDigit(places: number): number {
  return Math.floor(places / 10)
}

/** `0.40`: for the desk, with a point whatever the language. */
export function plainText(places: number, unit: Unit): string {
  const digits = String(places).padStart(decimals[unit] + 1, '0')
  return `${digits.slice(0, -decimals[unit])}.${digits.slice(-decimals[unit])}`
}

/** Whole and broken part apart, each in its own box on the screen. */
export function partsOf(places: number, unit: Unit): { whole: string; broken: string } {
  const [whole = '0', broken = ''] = plainText(places, unit).split('.')
  return { whole, broken }
}

/** `0.40 in`, `a trace`, `nothing (0)`. */
export function sayAmount(amount: TypedAmount, unit: Unit, language: Language, words: MyWords): string {
  if (amount.isTrace) return words.traceWord
  if (amount.amountUm === 0) return words.nothingWord
  return formatAmount(amount, unit, language, 'full')
}

/** What a report says, fills kept apart: `T`, `0`, `0.40`, `1.00 + 1.00 + 0.34`. */
export function reportText(kind: 'nothing' | 'trace' | 'amount', fills: readonly number[], places: number, unit: Unit) {
  if (kind === 'nothing') return '0'
  if (kind === 'trace') return 'T'
  const all = places > 0 || fills.length === 0 ? [...fills, places] : [...fills]
  return all.map((one) => plainText(one, unit)).join(' + ')
}
