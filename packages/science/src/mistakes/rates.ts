/**
 * How often each mistake is made, before the report is seen: three steps of frequency by reason, and one overall rate
 * per network. A number is typed every morning, so a lost point and a zero without a look come first; a wrong date, a
 * silent total, a swapped unit, a dropped fill, dew or a swapped digit need something more to happen; an amount copied
 * from yesterday or a tube left at its brim is rarest. The steps are common practice; of four
 * such orders tried, the one kept also ranked best on labelled mistakes (docs/decisions/0009).
 */
import type { Mistake } from './mistake.ts'

const common = 3
const occasional = 1
const rare = 0.3

/** Relative chance per report where the mistake could be made; they are scaled by the network's rate. */
export const mistakeWeight: Readonly<Record<Mistake, number>> = {
  decimal: common,
  unit: occasional,
  day: occasional,
  carried: occasional,
  'first-fill-lost': occasional,
  'first-fill-only': rare,
  'false-zero': common,
  wetted: occasional,
  transposed: occasional,
  repeated: rare,
  other: occasional,
}

/** Share of each mistake in all mistakes; sums to 1. */
export type MistakeShares = Readonly<Record<Mistake, number>>

const total = Object.values(mistakeWeight).reduce((a, b) => a + b, 0)

/** Share of each mistake in the overall rate; sums to 1. */
export const mistakeShare = Object.fromEntries(
  Object.entries(mistakeWeight).map(([kind, weight]) => [kind, weight / total]),
) as MistakeShares

/** Of the mistakes, the share that shows on a dry day: water that is not rain, and amounts out of nowhere. */
export function dryShareOf(shares: MistakeShares): number {
  return shares.wetted + shares.other
}
