/** All that is learned of a network: plain data, to be stored, sent to a worker and read back (structured clone). */
import type { Climate } from '../climate/climate.ts'
import type { Correlation } from '../expectation/correlation.ts'
import type { MistakeShares } from '../mistakes/rates.ts'

/**
 * Calibration of what the neighbours say: from the cavity's mean m and variance v to the predictive distribution of the
 * report's score. Fitted by likelihood on the network's readings, see learnSpread.ts.
 *
 *   mean = shift + slope · m + curve · m²
 *   base = exp(logSd + monthLogSd[month]) · v^(variancePower / 2) · surroundings^surroundingsPower
 *   sd   = base · exp(level · m + levelCurve · m² + wetLog where 1 mm or more is expected)
 *   wide = base · exp(wideLevel · m)
 *   law  = (1 - share) · N(mean, sd²) + share · N(mean, wide²), each half by its own numbers: above the mean, which is the
 *          median, sd · exp(skew), wide · wideHigh and shareHigh, below it sd · exp(-skew), wide · wideLow and shareLow
 */
export interface Spread {
  shift: number
  slope: number
  curve: number
  logSd: number
  /** Season's part, by month. */
  monthLogSd: readonly number[]
  /** Narrowing of the main part where properly wet days are expected, so that intervals hold what they say. */
  wetLogLow: number
  wetLogHigh: number
  variancePower: number
  surroundingsPower: number
  level: number
  levelCurve: number
  shareLow: number
  shareHigh: number
  wideLow: number
  wideHigh: number
  wideLevel: number
  skew: number
}

export interface Model {
  version: string
  climate: Climate
  correlation: Correlation
  spread: Spread
  /** Share of reports that are wrong in some way. */
  mistakeRate: number
  /** What the mistakes are; sums to 1. */
  mistakeShare: MistakeShares
  /** Factor on each gauge's share of mistakes (1 is usual); Float64Array(gaugeCount). */
  mistakeFactor: Float64Array
  /**
   * Of the reports of a gauge that look dated a day off or carried over days, the share that are slips (0 to 1). The
   * rest is its habit: a reading hour of its own, known and reported as such, not flagged every wet day.
   */
  slipShare: Float64Array
  /** Depth of the inner tube, mm. */
  tubeMm: number
}

/** Changes whenever findings would. */
export const modelVersion = '6'
