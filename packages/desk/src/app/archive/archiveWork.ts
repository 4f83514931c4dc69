/** What the threads of `check` and `expect` are handed: once at their start, and for each stretch of days. */
import type { DailyTable, GaugeSet, Model } from '@gaugewright/science'

export interface ArchiveWork {
  task: 'check' | 'expect'
  gauges: GaugeSet
  /** Shared between threads. */
  table: DailyTable
  /** Null where every chunk learns its own. */
  model: Model | null
  sameMorning: boolean
  /** For `expect`: levels of the quantiles. */
  levels: Float64Array
  /** For `expect`: places without a gauge; null for the gauges themselves, each left out. */
  points: GaugeSet | null
}

export interface ChunkResult {
  /** Whole CSV lines. */
  text: string
  rows: number
}
