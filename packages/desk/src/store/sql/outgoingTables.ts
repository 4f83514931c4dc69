/** Messages on their way out, as Kysely sees them. Instants are milliseconds, truth 0 or 1. */
export interface OutgoingTable {
  network_key: number
  /** Order of arrival within the network. */
  sequence: number
  id: string
  message_key: string
  purpose: string
  kind: string
  recipient: string
  /** JSON of OutgoingContent. */
  content: string
  repeatable: number
  is_secret: number
  by_name: string
  queued_at_ms: number
  not_after_ms: number | null
  state: string
  attempts: number
  last_error: string | null
  not_before_ms: number
  changed_at_ms: number
  sent_at_ms: number | null
  receipt: string | null
  is_emptied: number
  token: string | null
  lease_until_ms: number | null
  is_handed_over: number
  discarded_from: string | null
}

/** Only ever added to. */
export interface OutgoingEventTable {
  network_key: number
  sequence: number
  message_id: string
  what: string
  by_name: string
  at_ms: number
  detail: string | null
}

export interface AbsenceTable {
  network_key: number
  sequence: number
  id: string
  gauge_key: number
  first_day: number
  last_day: number
  announced_by: string
  announced_at_ms: number
  withdrawn_by: string | null
  withdrawn_at_ms: number | null
}

/** How mail and reminders are set; the last of each is in force. */
export interface OutgoingSettingTable {
  network_key: number
  sequence: number
  what: string
  /** JSON. */
  settings: string
  by_name: string
  set_at_ms: number
}

/** Whether and how a person wants to be reminded; the last is in force. */
export interface ReminderChoiceTable {
  network_key: number
  sequence: number
  person_id: string
  wants: number
  way: string
  phone: string | null
  by_name: string
  chosen_at_ms: number
}

/** Signs the links by which reminders are stopped. */
export interface ReminderKeyTable {
  network_key: number
  secret: string
}
