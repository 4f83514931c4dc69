/**
 * The quick path for amounts in files: plain numbers with a decimal point, exact, without a regular expression or a big
 * integer. Everything else (words, commas, signs, units) goes to parseAmount of the science.
 */
import type { Unit } from '@gaugewright/science'

const powers = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000]
const UM_PER = { mm: 1_000, in: 25_400 } as const

/**
 * Whole micrometres of `12`, `0.25`, `.4`; -1 where the text is not such a number (or has leading zeros, more than four
 * digits before the point or six behind it). Digits below a micrometre are rounded half up. Time O(length).
 */
export function plainAmountUm(text: string, unit: Unit): number {
  const length = text.length
  if (length === 0 || length > 11) return -1
  let value = 0
  let decimals = -1
  for (let index = 0; index < length; index++) {
    const code = text.charCodeAt(index)
    if (code === 46) {
      if (decimals >= 0 || index === length - 1 || index > 4) return -1
      decimals = length - 1 - index
    } else {
      const digit = code - 48
      if (digit < 0 || digit > 9) return -1
      value = value * 10 + digit
    }
  }
  if (decimals < 0) {
    if (length > 4 || (length > 1 && text.charCodeAt(0) === 48)) return -1
    return value * UM_PER[unit]
  }
  if (decimals > 6 || (length - decimals > 2 && text.charCodeAt(0) === 48)) return -1
  return Math.round((value * UM_PER[unit]) / (powers[decimals] ?? 1))
}
