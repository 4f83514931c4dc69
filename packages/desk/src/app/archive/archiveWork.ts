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
  /** First of the places to give expectations for: 0, or the first of the points, which stand after the gauges. */
  firstPlace: number
}

export interface ChunkResult {
  /** Whole CSV lines. */
  text: string
  rows: number
}
