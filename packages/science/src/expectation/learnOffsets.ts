/** Which gauges date their days apart from the network's, and how much of one day's rain is left the next. */
import { type Correlation, pairLags } from './correlation.ts'
import type { PairSeen } from './pairHistory.ts'

const maxLag = pairLags

/** A gauge whose reports go with its neighbours' next (or previous) day: by how much of a day, from the lags around 0. */
export function learnOffsets(correlation: Correlation, pairs: PairSeen[], n: number): void {
  const offset = correlation.offsetDays
  for (let round = 0; round < 3; round++) {
    const sums = new Float64Array(n * 3)
    const weights = new Float64Array(n)
    for (const pair of pairs) {
      const weight =
        Math.max(0, Math.max(pair.byLag[1]!, pair.byLag[2]!, pair.byLag[3]!)) ** 4 * Math.min(1, pair.days / 300)
      if (!(weight > 0.01)) continue
      for (const [own, other, sign] of [
        [pair.i, pair.j, 1],
        [pair.j, pair.i, -1],
      ] as const) {
        // A neighbour's own offset moves the lag at which it should agree.
        const moved = Math.round(-offset[other]!)
        let usable = true
        for (let k = -1; k <= 1; k++) {
          const lag = sign * (k + moved) + maxLag
          if (!(lag >= 0 && lag <= 2 * maxLag) || Number.isNaN(pair.byLag[lag]!)) usable = false
        }
        if (!usable || Math.abs(offset[other]! + moved) > 0.3) continue
        for (let k = -1; k <= 1; k++) sums[own * 3 + k + 1]! += weight * pair.byLag[sign * (k + moved) + maxLag]!
        weights[own]! += weight
      }
    }
    for (let g = 0; g < n; g++) {
      if (weights[g]! <= 0) continue
      const before = sums[g * 3]! / weights[g]!
      const same = sums[g * 3 + 1]! / weights[g]!
      const after = sums[g * 3 + 2]! / weights[g]!
      const floor = Math.min(before, after)
      const reach = Math.max(before, after) - floor
      const share = reach / Math.max(0.05, reach + Math.max(0, same - floor))
      const signed = after > before ? share : -share
      const confident = weights[g]! / (weights[g]! + 0.1)
      offset[g] = Math.round(signed * confident * 8) / 8
      if (Math.abs(offset[g]!) < 0.2) offset[g] = 0
    }
    const middle = median(Float64Array.from(offset))
    for (let g = 0; g < n; g++) offset[g]! -= middle
  }
}

function median(values: Float64Array): number {
  values.sort()
  return values[values.length >> 1]!
}

export function learnPersistence(correlation: Correlation, pairs: PairSeen[]): void {
  let lagged = 0
  let same = 0
  for (const pair of pairs) {
    if (correlation.offsetDays[pair.i] !== 0 || correlation.offsetDays[pair.j] !== 0) continue
    const a = pair.byLag[1]!
    const b = pair.byLag[3]!
    if (Number.isNaN(a) || Number.isNaN(b) || !(pair.byLag[2]! > 0.3)) continue
    lagged += pair.days * Math.min(a, b)
    same += pair.days * pair.byLag[2]!
  }
  if (same > 0) correlation.persistence = Math.min(0.3, Math.max(0.02, lagged / same))
}
