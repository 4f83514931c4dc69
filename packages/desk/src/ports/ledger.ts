/**
 * What the desk asks of its store. Every adapter passes the same promises (store/storePromises.ts). Readings and
 * decisions are append-only; keys lead with network and gauge so that a table can be partitioned by them.
 */
import type { Decision, IsoDay, Reading, Unit } from '@gaugewright/science'
import type { Delivery } from './deliveries.ts'

export interface NetworkSettings {
  id: string
  name: string
  /** IANA zone, e.g. `Europe/Rome`. */
  timeZone: string
  /** Local reading hour, `07:00`. */
  readingTime: string
  /** Readings this many minutes before or after the reading hour count as the day's. */
  acceptWindowMin: number
  unit: Unit
  language: 'en' | 'es'
  /** Readings whose odds of standing are below this come to the docket. */
  docketBelow: number
}

export interface Gauge {
  id: string
  networkId: string
  /** Our own code: base 32 with an ISO 7064 check character; or the id of an imported network, kept as it came. */
  code: string
  name: string
  latDeg: number
  lonDeg: number
  elevationM: number | null
  area: string | null
  observerName: string | null
  /** Smallest step the gauge resolves, in micrometres (254 or 100 or 200); null when unknown. */
  resolutionUm: number | null
  openedOn: IsoDay | null
  closedOn: IsoDay | null
}

/**
 * What the coordinator lets a rule decide alone, from the instant it is set until the next setting. Only ever added:
 * setting an old one again is a new row.
 */
export interface RuleSetting {
  id: string
  /** "Let stand when at least this sure": odds, 0.5 to below 1; null leaves everything to a person. */
  letStandAt: number | null
  by: string
  /** Of a person who was signed in. Once such a person is forgotten, the name is empty and the id gone. */
  byPersonId?: string
  why: string
  setAtUtc: string
}

/** Named polygons (counties, catchments) and the base map, as GeoJSON (RFC 7946). */
export interface MapLayer {
  networkId: string
  name: string
  kind: 'area' | 'river' | 'place' | 'relief' | 'outline'
  geojson: unknown
}

export interface Absence {
  networkId: string
  gaugeId: string
  firstDay: IsoDay
  lastDay: IsoDay
}

export interface AppendResult {
  /** All that were stored, the superseding ones among them. */
  stored: number
  /** Same gauge, interval and amount already there: nothing done. */
  already: number
  /** Of those stored, the ones that supersede an earlier reading. */
  superseding: number
}

/**
 * One delivery, taken whole or not at all: nothing is seen by others, or kept, until `commit`, which resolves when it is
 * durable. While a load is open, other writers wait; end every load.
 */
export interface LedgerLoad {
  saveNetwork(network: NetworkSettings): Promise<void>
  saveGauges(gauges: readonly Gauge[]): Promise<SaveResult>
  /** Of the network that the load was opened for. May be called many times; adds up. */
  appendReadings(readings: readonly Reading[]): Promise<AppendResult>
  /** Keep that this delivery came, and what it was answered, with its readings. ID_TAKEN where its key is there already. */
  keepDelivery(delivery: Delivery): Promise<void>
  commit(): Promise<void>
  rollback(): Promise<void>
}

export interface SaveResult {
  added: number
  changed: number
  same: number
}

/** Every method rejects with a LedgerError (ledgerError.ts), and then nothing has changed. Instants come back as RFC 3339 in UTC. */
export interface Ledger {
  /** @param networkId for `appendReadings`; the network may be saved within the load itself */
  load(networkId: string): Promise<LedgerLoad>
  networks(): Promise<NetworkSettings[]>
  saveNetwork(network: NetworkSettings): Promise<void>
  gauges(networkId: string): Promise<Gauge[]>
  /** The gauge whose id or code is exactly this; null where there is none. Costs no look through the others. */
  gauge(networkId: string, idOrCode: string): Promise<Gauge | null>
  /** Insert or update by (networkId, code). */
  saveGauges(gauges: readonly Gauge[]): Promise<SaveResult>
  /**
   * All or nothing; durable when it resolves. A reading whose gauge, interval and amount are those of the newest reading
   * of that interval is there already; another amount supersedes it, whatever `supersedes` says. `supersedes` matters
   * where a correction covers other days than the reading that it corrects.
   */
  appendReadings(networkId: string, readings: readonly Reading[]): Promise<AppendResult>
  /** Current (not superseded) readings whose lastDay lies in the range, ordered by lastDay, gaugeId. */
  readings(networkId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Reading[]>
  /** Current readings of one gauge whose lastDay lies in the range, oldest first. */
  readingsOfGauge(networkId: string, gaugeId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Reading[]>
  /** Same as `readings`, streamed compactly for the science: one row per reading. Other calls may be awaited within. */
  readingAmounts(networkId: string, fromDay: IsoDay, toDay: IsoDay): AsyncIterable<ReadingAmount>
  /** Any reading, superseded or not, and those that it superseded one after the other, newest first. */
  reading(networkId: string, id: string): Promise<{ reading: Reading; superseded: Reading[] } | null>
  /** The delivery of this key, with what it was answered; null where none came. */
  delivery(networkId: string, key: string): Promise<Delivery | null>
  /** Null where there is no reading. Costs no look through the readings. */
  dayRange(networkId: string): Promise<DayRange | null>
  appendDecision(networkId: string, decision: Decision): Promise<void>
  /** All or nothing; durable when it resolves. */
  appendDecisions(networkId: string, decisions: readonly Decision[]): Promise<void>
  /** Every decision on readings whose lastDay lies in the range, oldest first, undone ones included. */
  decisions(networkId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Decision[]>
  appendRuleSetting(networkId: string, setting: RuleSetting): Promise<void>
  /** Every setting of the network's rule, oldest first; the last is in force. */
  ruleSettings(networkId: string): Promise<RuleSetting[]>
  /**
   * Takes the name and the id of a person out of their decisions and settings, in every network; what was decided stays.
   * The one change that a decision allows.
   */
  forgetPerson(personId: string): Promise<void>
  /** Decisions by this person, whatever the network, oldest first: for the export of what is held on them. */
  decisionsBy(personId: string): Promise<Decision[]>
  absences(networkId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Absence[]>
  saveAbsence(absence: Absence): Promise<void>
  layers(networkId: string): Promise<MapLayer[]>
  saveLayer(layer: MapLayer): Promise<void>
  /** A derived thing that may be thrown away and made anew (the learned model), by key and version. */
  cached(networkId: string, key: string): Promise<{ version: string; body: string } | null>
  saveCached(networkId: string, key: string, version: string, body: string): Promise<void>
  close(): Promise<void>
}

/** How far the readings of a network reach. */
export interface DayRange {
  /** First and last `lastDay`. */
  firstDay: IsoDay
  lastDay: IsoDay
  /** Current readings. */
  readings: number
  /** All readings ever stored, superseded ones included: as long as it stays, so do all readings. */
  stored: number
}

export interface ReadingAmount {
  readingId: string
  gaugeId: string
  firstDay: IsoDay
  lastDay: IsoDay
  amountUm: number
  isTrace: boolean
}

export interface Clock {
  nowUtc(): string
}
