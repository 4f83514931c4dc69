/** Urgent reports as Kysely sees them. Instants in milliseconds; `body` is JSON without any name of a person. */
export interface UrgentEventTable {
  network_key: number
  /** 1, 2, 3, … within the network. */
  number: number
  id: string
  report_id: string
  what: string
  at_ms: number
  by_name: string
  by_person: string | null
  /** Of `undone`: the id of the event taken back. */
  target: string | null
  body: string
}

export interface UrgentSettingTable {
  network_key: number
  sequence: number
  set_at_ms: number
  by_name: string
  body: string
}

export interface UrgentTables {
  urgent_event: UrgentEventTable
  urgent_setting: UrgentSettingTable
}
