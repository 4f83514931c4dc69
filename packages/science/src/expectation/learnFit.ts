/** How well each gauge goes with the others, beyond what distance says. */
import { type Correlation, correlationByShift } from './correlation.ts'
import type { PairSeen } from './pairHistory.ts'

/** How much better or worse each gauge goes with all others than distance says: alternating mean of log ratios. */
export function learnFit(correlation: Correlation, pairs: PairSeen[], n: number): void {
  const log = new Float64Array(n)
  const top = correlation.shortShare + correlation.longShare + correlation.plateau
  for (let round = 0; round < 6; round++) {
    const sums = new Float64Array(n)
    const weights = new Float64Array(n).fill(0.7)
    for (const { i, j, distanceM, days, byLag } of pairs) {
      const shift = correlation.offsetDays[i]! - correlation.offsetDays[j]!
      const model =
        (correlation.shortShare * Math.exp(-distanceM / correlation.shortRangeM) +
          correlation.longShare * Math.exp(-distanceM / correlation.longRangeM) +
          correlation.plateau) *
        correlationByShift(correlation, shift)
      const seen = byLag[2]!
      if (!(seen > 0.05) || model < 0.15) continue
      const weight = Math.min(1, days / 300) * model ** 4
      const ratio = Math.log(seen / model)
      sums[i]! += weight * (ratio - log[j]!)
      sums[j]! += weight * (ratio - log[i]!)
      weights[i]! += weight
      weights[j]! += weight
    }
    for (let g = 0; g < n; g++) log[g] = 0.5 * log[g]! + 0.5 * (sums[g]! / weights[g]!)
  }
  const most = Math.sqrt(0.995 / top)
  for (let g = 0; g < n; g++) correlation.fit[g] = Math.min(most, Math.max(0.4, Math.exp(log[g]!)))
}
