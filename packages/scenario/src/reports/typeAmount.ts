/** The text that an observer types for an amount. */
import type { AmountStyle } from '../people/observer.ts'
import { OWN_DECIMALS } from './reportTable.ts'

/**
 * @param hundredths  amount in hundredths of the typed unit
 * @param decimals    0, 1 or 2, or OWN_DECIMALS for the observer's own way
 */
export function typeAmount(
  hundredths: number,
  isTrace: boolean,
  inMm: boolean,
  style: AmountStyle,
  decimals: number,
): string {
  if (isTrace) return style.trace
  if (hundredths === 0) return style.zero
  let text = (hundredths / 100).toFixed(2)
  if (decimals !== OWN_DECIMALS) {
    text = (hundredths / 100).toFixed(decimals)
    if (Math.round(Number(text) * 100) !== hundredths) text = (hundredths / 100).toFixed(2)
  } else if (inMm || !style.trailingZeros) {
    text = String(hundredths / 100)
    if (inMm && !text.includes('.')) text += '.0'
  }
  return style.leadingZero || !text.startsWith('0.') ? text : text.slice(1)
}
