/** What the threads that judge past mornings are handed: the network once at their start, then stretches of days. */
import type { DailyTable, GaugeSet, Model } from '@gaugewright/science'

export interface OddsWork {
  gauges: GaugeSet
  model: Model
}

export interface OddsStretch {
  /** Days before `fromDay` give context. */
  table: DailyTable
  /** Epoch days, both included. */
  fromDay: number
  toDay: number
}

/** One entry per reading about which something can be told. */
export interface OddsOfStretch {
  /** Epoch days. */
  day: Int32Array
  /** Column of the table. */
  gauge: Int32Array
  pStands: Float64Array
  /** Readings without a usable neighbour. */
  cannotTell: number
}
