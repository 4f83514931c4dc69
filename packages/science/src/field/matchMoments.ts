/**
 * A normal belief meets a cell it is known to lie in: the share of the belief inside, and the Gaussian factor (site)
 * that brings the belief to the mean and variance of its part inside. One step of expectation propagation,
 * [Minka2001]; moments of the truncated normal as in [Johnson1994].
 */
import { logNormalCdf, logNormalInterval, normalHazardBelow, normalInterval, normalPdf } from '../stats/normalCdf.ts'

export interface Site {
  mean: number
  variance: number
  /** Natural logarithm of the share of the belief inside the cell. */
  logShare: number
}

const mostVariance = 1e6

/** @param out  filled with the site; low may be -Infinity */
export function matchMoments(mean: number, variance: number, low: number, high: number, out: Site): void {
  const sd = Math.sqrt(variance)
  const b = (high - mean) / sd
  let cellMean: number
  let cellVariance: number
  if (low === Number.NEGATIVE_INFINITY) {
    out.logShare = logNormalCdf(b)
    const hazard = normalHazardBelow(b)
    cellMean = -hazard
    cellVariance = b < -8 ? 1 / (b * b + 3) : 1 - hazard * (b + hazard)
  } else {
    const a = (low - mean) / sd
    out.logShare = logNormalInterval(a, b)
    const share = normalInterval(a, b)
    if (share > 1e-9) {
      const atA = normalPdf(a)
      const atB = normalPdf(b)
      cellMean = (atA - atB) / share
      cellVariance = 1 + (a * atA - b * atB) / share - cellMean * cellMean
    } else {
      // The belief lies far off: what is left of it leans against the near end.
      cellMean = a > 0 ? Math.min(a + 1 / a, 0.5 * (a + b)) : Math.max(b + 1 / b, 0.5 * (a + b))
      cellVariance = Math.min(1 / (cellMean * cellMean), ((b - a) * (b - a)) / 12)
    }
    cellVariance = Math.max(cellVariance, 1e-3 * Math.min(1, (b - a) * (b - a)))
  }
  cellVariance = Math.min(cellVariance, 1 - 1e-9)
  const precision = Math.max(1 / mostVariance, (1 / cellVariance - 1) / variance)
  out.variance = 1 / precision
  // Site mean from natural parameters: shift = cell mean / cell variance - belief mean / variance.
  out.mean = mean + ((cellMean * sd) / cellVariance / variance) * out.variance
}
