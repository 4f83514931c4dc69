/** All that is learned of a network: plain data, to be stored, sent to a worker and read back (structured clone). */
import type { Climate } from '../climate/climate.ts'
import type { Correlation } from '../expectation/correlation.ts'

/**
 * Calibration of what the neighbours say: from the cavity's mean m and variance v to the predictive distribution of the
 * report's score. Fitted by likelihood on the network's readings, see learnSpread.ts.
 *
 *   mean = shift + slope · m + curve · m²
 *   base = exp(logSd + monthLogSd[month]) · v^(variancePower / 2) · surroundings^surroundingsPower
 *   sd   = base · exp(level · m + levelCurve · m² + wetLogSd where 1 mm or more is expected)
 *   law  = (1 - wideShare) · N(mean, sd²) + wideShare · N(mean, (wideFactor · base)²)
 */
export interface Spread {
  shift: number
  slope: number
  curve: number
  logSd: number
  /** Season's part, by month. */
  monthLogSd: readonly number[]
  /** Narrowing of the main part where properly wet days are expected, so that intervals hold what they say. */
  wetLogSd: number
  variancePower: number
  surroundingsPower: number
  level: number
  levelCurve: number
  wideShare: number
  wideFactor: number
}

export interface Model {
  version: string
  climate: Climate
  correlation: Correlation
  spread: Spread
  /** Share of reports that are wrong in some way. */
  mistakeRate: number
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
export const modelVersion = '4'
