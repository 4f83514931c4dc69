/**
 * A confirmed reading: at entry the observer was asked back, looked at the gauge again, and gave this amount. Slips of
 * typing rarely survive a second look; a wrong day, a tube forgotten or dew in the gauge may well.
 */
import type { MistakeShares } from './rates.ts'

/** Share of typing slips that survive a second look with the gauge drawn at what was typed. Common practice: one in ten. */
export const confirmedSlipShare = 0.1

const made = new WeakMap<MistakeShares, MistakeShares>()

/** The same shares with those of decimal, unit and transposed cut; they no longer sum to 1. */
export function confirmedShares(shares: MistakeShares): MistakeShares {
  const before = made.get(shares)
  if (before !== undefined) return before
  const cut = {
    ...shares,
    decimal: shares.decimal * confirmedSlipShare,
    unit: shares.unit * confirmedSlipShare,
    transposed: shares.transposed * confirmedSlipShare,
  }
  made.set(shares, cut)
  return cut
}
