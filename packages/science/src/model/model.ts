/** All that is learned of a network: plain data, to be stored, sent to a worker and read back (structured clone). */
import type { Climate } from '../climate/climate.ts'
import type { Correlation } from '../expectation/correlation.ts'

/** Calibration of the predictive spread: fitted by likelihood on readings, see learnSpread.ts. */
export interface Spread {
  /** On the cavity variance. */
  factor: number
  /** Power of the surroundings' own spread that widens the distribution. */
  power: number
  /** Share and widening of the heavy-tailed part. */
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
  /** Depth of the inner tube, mm. */
  tubeMm: number
}

/** Changes whenever findings would. */
export const modelVersion = '1'
