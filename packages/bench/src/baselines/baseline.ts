/**
 * A published way of checking daily amounts against neighbours, written here only to be compared with. Each gives a
 * score to every reading (higher = more suspect) instead of a flag, so that all can be ranked at any false-alarm rate.
 */
import type { DailyTable, GaugeSet } from '@gaugewright/science'

export interface BaselineAsk {
  gauges: GaugeSet
  /** The table to judge. */
  table: DailyTable
  /** Earlier readings for climate, where there are some. */
  history: DailyTable | null
}

export interface Baseline {
  name: string
  source: string
  /** @returns one score per cell of the table; NaN where there is no reading or the check cannot tell */
  score(ask: BaselineAsk): Float64Array
}
