/** Findings over many reports as arrays, one entry per judged report, by day, then gauge. */
import type { LatentTable } from '../expectation/latentTable.ts'
import type { Neighbourhood } from '../expectation/neighbourhood.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import type { Stretch } from './sequence.ts'

export interface JudgeAsk {
  /** Epoch days to give findings for, both included. The table should reach a week before and two days after. */
  fromDay: number
  toDay: number
  /** Judge each day by nothing later than itself. */
  sameMorning: boolean
}

export interface LikelyStretch {
  stretch: Stretch
  chance: number
}

export interface Judgement {
  count: number
  gauge: Int32Array
  /** Epoch days. */
  day: Int32Array
  pStands: Float64Array
  /** Index into `mistakes` of the likeliest one, and its odds. */
  mistake: Uint8Array
  pMistake: Float64Array
  /** What is proposed instead, over which days; mm. */
  proposedMm: Float64Array
  proposedFirstDay: Int32Array
  proposedLastDay: Int32Array
  /** Neighbouring reports that took part; 0 means that nothing can be told. */
  neighbourCount: Uint8Array
  gauges: GaugeSet
  latent: LatentTable
  hood: Neighbourhood
  sameMorning: boolean
  /** Per cell of the table: chance that the report is explained without the days around it. */
  alone: Float64Array
  /** Per cell: the stretches that may cover it. */
  covering: Map<number, LikelyStretch[]>
}

export function openJudgement(gauges: GaugeSet, latent: LatentTable, hood: Neighbourhood, ask: JudgeAsk): Judgement {
  const { table } = latent
  const { from, to } = askedRows(latent, ask)
  let count = 0
  for (let i = from * table.gaugeCount; i < (to + 1) * table.gaugeCount; i++) if (table.spanDays[i]! > 0) count++
  return {
    count: 0,
    gauge: new Int32Array(count),
    day: new Int32Array(count),
    pStands: new Float64Array(count),
    mistake: new Uint8Array(count),
    pMistake: new Float64Array(count),
    proposedMm: new Float64Array(count),
    proposedFirstDay: new Int32Array(count),
    proposedLastDay: new Int32Array(count),
    neighbourCount: new Uint8Array(count),
    gauges,
    latent,
    hood,
    sameMorning: ask.sameMorning,
    alone: new Float64Array(table.gaugeCount * table.dayCount).fill(1),
    covering: new Map(),
  }
}

export function askedRows(latent: LatentTable, ask: JudgeAsk): { from: number; to: number } {
  const { table } = latent
  return {
    from: Math.max(0, ask.fromDay - table.firstDay),
    to: Math.min(table.dayCount - 1, ask.toDay - table.firstDay),
  }
}
