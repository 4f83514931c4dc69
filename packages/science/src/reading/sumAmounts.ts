/**
 * Sums of amounts with the rule of traces: T + T = T, T + 0 = T, T + 0.01 = 0.01. Missing readings cannot be added:
 * decide what a gap means before summing. Source: common practice.
 */
import type { Amount } from './reading.ts'

export function addAmounts(one: Amount, other: Amount): Amount {
  const amountUm = one.amountUm + other.amountUm
  return { amountUm, isTrace: amountUm === 0 && (one.isTrace || other.isTrace) }
}

/** Sum of n amounts; `null` for none at all, because silence is not a zero. Exact: whole micrometres. Time O(n). */
export function sumAmounts(amounts: Iterable<Amount>): Amount | null {
  let sum: Amount | null = null
  for (const amount of amounts)
    sum = sum === null ? addAmounts(amount, { amountUm: 0, isTrace: false }) : addAmounts(sum, amount)
  return sum
}
