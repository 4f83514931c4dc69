/** What the program makes: an invented network, ready to be stored. Days are epoch days unless they are ISO text. */
import type { ExplanationKind, IsoDay, Unit } from '@gaugewright/science'
import type { ScenarioLayer } from './map/makeBasinMap.ts'

export interface ScenarioAsk {
  /** Any whole number; the same number and day make the same network. */
  seed: number
  /** This morning: the last observing day. */
  today: IsoDay
  gaugeCount?: number
  /** Years of readings before this morning. */
  years?: number
  /** Code of a gauge from its serial number (whole, below 190 080, all different); our own codes when left out. */
  makeCode?: (serial: number) => string
}

export interface Scenario {
  network: ScenarioNetwork
  gauges: ScenarioGauge[]
  /** In drawing order. */
  layers: ScenarioLayer[]
  /** Ordered by last day, then gauge. */
  readings: ScenarioReadings
  absences: ScenarioAbsence[]
  /** For scoring only; it must never reach a ledger. */
  truth: ScenarioTruth
  /** The instant at which this morning's desk opens: nothing was received later (RFC 3339, UTC). */
  preparedAtUtc: string
}

export interface ScenarioNetwork {
  name: string
  /** IANA zone without summer time: the basin's days all have 24 hours. */
  timeZone: string
  readingTime: string
  acceptWindowMin: number
  unit: Unit
  language: 'en'
  docketBelow: number
}

export interface ScenarioGauge {
  code: string
  name: string
  latDeg: number
  lonDeg: number
  elevationM: number
  /** County. */
  area: string
  observerName: string
  resolutionUm: number
  openedOn: IsoDay
  closedOn: IsoDay | null
}

/** Readings as columns: the i-th of each array belongs to the i-th reading. `readingAt` puts one together. */
export interface ScenarioReadings {
  count: number
  /** Place in `Scenario.gauges`. */
  gauge: Uint16Array
  firstDay: Int32Array
  lastDay: Int32Array
  /** Instants, ms since 1970-01-01 UTC. */
  startsAtMs: Float64Array
  endsAtMs: Float64Array
  receivedAtMs: Float64Array
  text: string[]
  /** 1 where typed as mm, 0 as inches. */
  inMm: Uint8Array
  /** What the text says. */
  amountUm: Int32Array
  isTrace: Uint8Array
  remarks: ReadonlyMap<number, string>
}

export interface ScenarioReading {
  gauge: number
  kind: 'daily' | 'multiday'
  firstDay: IsoDay
  lastDay: IsoDay
  startsAtUtc: string
  endsAtUtc: string
  receivedAtUtc: string
  text: string
  unit: Unit
  amountUm: number
  isTrace: boolean
  remark: string | null
}

export interface ScenarioAbsence {
  /** Place in `Scenario.gauges`. */
  gauge: number
  firstDay: IsoDay
  lastDay: IsoDay
}

/** The truth beside each reading, as columns of the same length as the readings. */
export interface ScenarioTruth {
  /** Place in `kinds`. */
  kind: Uint8Array
  /** `stands`, then the mistakes in their usual order. */
  kinds: readonly ExplanationKind[]
  /** What the gauge held over firstDay…lastDay of the reading. */
  caughtUm: Int32Array
  /** Days that the typed amount stems from; others than the reading's own where it was carried or slipped. */
  ownFirstDay: Int32Array
  ownLastDay: Int32Array
  /** The cases placed by hand this morning; `reading` is a place in the readings. */
  morning: { name: string; kind: ExplanationKind; gauge: number; reading: number }[]
}
