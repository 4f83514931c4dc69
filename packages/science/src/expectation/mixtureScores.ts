/**
 * Quantiles of a narrow and a wide normal with the same mean, in units of the narrow one's spread. They depend on the
 * wide part's share and factor alone, which a network's days have in common: found once, they serve every gauge and day.
 */
import { normalCdf, normalPdf } from '../stats/normalCdf.ts'
import { normalQuantile } from '../stats/normalQuantile.ts'

export class MixtureScores {
  private readonly levels: Float64Array
  private readonly scores: Float64Array
  private wideShare = Number.NaN
  private wideFactor = Number.NaN

  /** @param levels  between 0 and 1, ascending */
  constructor(levels: Float64Array) {
    this.levels = levels
    this.scores = new Float64Array(levels.length)
  }

  /** @returns one score per level, to 1e-12; the array is used again for the next shape */
  standardFor(wideShare: number, wideFactor: number): Float64Array {
    const isSame = wideShare === this.wideShare && Math.abs(wideFactor / this.wideFactor - 1) < 1e-12
    if (isSame) return this.scores
    this.wideShare = wideShare
    this.wideFactor = wideFactor
    for (let k = 0; k < this.levels.length; k++) this.scores[k] = mixtureScore(this.levels[k]!, wideShare, wideFactor)
    return this.scores
  }
}

/** Score below which (1 - wideShare) Φ(u) + wideShare Φ(u / wideFactor) reaches the level; by symmetry from the tail. */
export function mixtureScore(level: number, wideShare: number, wideFactor: number): number {
  if (level > 0.5) return -mixtureScore(1 - level, wideShare, wideFactor)
  const narrow = normalQuantile(level)
  let low = Math.min(narrow, wideFactor * narrow)
  let high = Math.max(narrow, wideFactor * narrow)
  let u = narrow
  for (let step = 0; step < 100; step++) {
    const value = (1 - wideShare) * normalCdf(u) + wideShare * normalCdf(u / wideFactor) - level
    if (value > 0) high = Math.min(high, u)
    else low = Math.max(low, u)
    const slope = (1 - wideShare) * normalPdf(u) + (wideShare / wideFactor) * normalPdf(u / wideFactor)
    let next = u - value / slope
    if (!(next >= low && next <= high)) next = 0.5 * (low + high)
    if (Math.abs(next - u) <= 1e-12 * (1 + Math.abs(u))) return next
    u = next
  }
  return u
}
