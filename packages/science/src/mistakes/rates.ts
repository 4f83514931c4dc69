/**
 * How often each mistake is made, before the report is seen: three steps of frequency by reason, and one overall rate
 * per network that is learned. Reading and dating slips dominate in the literature (references.md: 9 % of volunteer
 * readings wrong, a third of a network's zeros on non-working days false); the steps are common practice, not fits.
 */
import type { Mistake } from './mistake.ts'

const common = 3
const occasional = 2
const rare = 1

/** Relative chance per report where the mistake could be made; they are scaled by the network's rate. */
export const mistakeWeight: Readonly<Record<Mistake, number>> = {
  decimal: occasional,
  unit: rare,
  day: common,
  carried: common,
  'first-fill-lost': rare,
  'first-fill-only': rare,
  'false-zero': common,
  wetted: rare,
  transposed: rare,
  repeated: rare,
  other: rare,
}

const total = Object.values(mistakeWeight).reduce((a, b) => a + b, 0)

/** Share of each mistake in the overall rate; sums to 1. */
export const mistakeShare = Object.fromEntries(
  Object.entries(mistakeWeight).map(([kind, weight]) => [kind, weight / total]),
) as Readonly<Record<Mistake, number>>
