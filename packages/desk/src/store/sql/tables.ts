/**
 * The tables as Kysely sees them, the same for every database. Days are epoch days, instants milliseconds, truth 0 or 1.
 * Tables of observations lead with network_key and gauge_key, small numbers that stand for the ids within this file.
 */
import type { AccessTables } from './accessTables.ts'
import type { JournalTable } from './journalTable.ts'
import type { MachineTables } from './machineTables.ts'
import type {
  AbsenceTable,
  OutgoingEventTable,
  OutgoingSettingTable,
  OutgoingTable,
  ReminderChoiceTable,
  ReminderKeyTable,
} from './outgoingTables.ts'
import type { UrgentTables } from './urgentTables.ts'

export interface NetworkTable {
  network_key: number
  id: string
  name: string
  time_zone: string
  reading_time: string
  accept_window_min: number
  unit: string
  language: string
  docket_below: number
}

export interface GaugeTable {
  network_key: number
  gauge_key: number
  id: string
  code: string
  name: string
  lat_deg: number
  lon_deg: number
  elevation_m: number | null
  area: string | null
  observer_name: string | null
  resolution_um: number | null
  opened_on: number | null
  closed_on: number | null
}

export interface ReadingTable {
  network_key: number
  gauge_key: number
  last_day: number
  first_day: number
  /** 1 for the first reading of this gauge and interval, then one more for each that supersedes it. */
  version: number
  id: string
  amount_um: number
  is_trace: number
  starts_at_ms: number
  ends_at_ms: number
  received_at_ms: number
  text: string
  unit: string
  remark: string | null
  door: string
  supersedes: string | null
  /** JSON of Confirmed. */
  confirmed: string | null
}

/** Readings of each network: those that are current, and all that were ever stored. Changes with the readings themselves. */
export interface ReadingCountTable {
  network_key: number
  readings: number
  stored: number
}

export interface DecisionTable {
  network_key: number
  gauge_key: number
  /** Last day of the reading decided about. */
  last_day: number
  /** Order of arrival within the network. */
  sequence: number
  id: string
  reading_id: string
  verdict: string
  amended_um: number | null
  amended_is_trace: number | null
  amended_first_day: number | null
  amended_last_day: number | null
  by_kind: string
  by_name: string
  reason: string
  decided_at_ms: number
  undoes: string | null
  /** What the finding named to the person who decided. */
  mistake: string | null
  /** Id of the person, where one was signed in; null also once the person is forgotten. */
  by_person: string | null
}

export interface RuleSettingTable {
  network_key: number
  /** Order of arrival within the network. */
  sequence: number
  id: string
  let_stand_at: number | null
  by_name: string
  /** Id of the person, where one was signed in; null also once the person is forgotten. */
  by_person: string | null
  why: string
  set_at_ms: number
}

export interface MapLayerTable {
  network_key: number
  kind: string
  name: string
  geojson: string
}

export interface CacheTable {
  network_key: number
  key: string
  version: string
  body: string
}

export interface PhotoTable {
  network_key: number
  report_id: string
  /** Order of arrival within the report. */
  sequence: number
  sha256: string
  bytes: number
  width_px: number
  height_px: number
  received_at_ms: number
  by_name: string
}

export interface Tables extends AccessTables, MachineTables, UrgentTables {
  network: NetworkTable
  gauge: GaugeTable
  reading: ReadingTable
  reading_count: ReadingCountTable
  decision: DecisionTable
  rule_setting: RuleSettingTable
  absence: AbsenceTable
  journal: JournalTable
  outgoing: OutgoingTable
  outgoing_event: OutgoingEventTable
  outgoing_setting: OutgoingSettingTable
  reminder_choice: ReminderChoiceTable
  reminder_key: ReminderKeyTable
  map_layer: MapLayerTable
  cache: CacheTable
  photo: PhotoTable
}
