/**
 * Quantiles of a narrow and a wide normal with the same mean, in units of the narrow one's spread. For one share of the
 * wide part they change smoothly with its factor: found once on a grid of factors, read between by cubics.
 */
import { normalCdf, normalPdf } from '../stats/normalCdf.ts'
import { normalQuantile } from '../stats/normalQuantile.ts'

/** Step of the grid, in ln(wideFactor); leaves errors near 1e-7. */
const gridStep = 0.01

export class MixtureScores {
  private readonly levels: Float64Array
  private readonly scores: Float64Array
  private readonly rows = new Map<number, Float64Array>()
  private wideShare = Number.NaN

  /** @param levels  between 0 and 1, ascending */
  constructor(levels: Float64Array) {
    this.levels = levels
    this.scores = new Float64Array(levels.length)
  }

  /**
   * @param wideFactor  spread of the wide part over that of the narrow one, above 0
   * @returns one score per level, ascending, to 1e-6 or better; the array is used again by the next call
   */
  standardFor(wideShare: number, wideFactor: number): Float64Array {
    if (wideShare !== this.wideShare) this.rows.clear()
    this.wideShare = wideShare
    const position = Math.log(wideFactor) / gridStep
    const k = Math.floor(position)
    const t = position - k
    const [before, low, high, after] = [this.row(k - 1), this.row(k), this.row(k + 1), this.row(k + 2)]
    // Weights of the cubic through four even points. Source: Lagrange's formula.
    const w0 = (-t * (t - 1) * (t - 2)) / 6
    const w1 = ((t + 1) * (t - 1) * (t - 2)) / 2
    const w2 = (-(t + 1) * t * (t - 2)) / 2
    const w3 = ((t + 1) * t * (t - 1)) / 6
    let last = Number.NEGATIVE_INFINITY
    for (let i = 0; i < this.scores.length; i++) {
      last = Math.max(last, w0 * before[i]! + w1 * low[i]! + w2 * high[i]! + w3 * after[i]!)
      this.scores[i] = last
    }
    return this.scores
  }

  private row(k: number): Float64Array {
    const known = this.rows.get(k)
    if (known !== undefined) return known
    const row = this.levels.map((level) => mixtureScore(level, this.wideShare, Math.exp(k * gridStep)))
    this.rows.set(k, row)
    return row
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
