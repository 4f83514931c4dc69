/** What is written down about people and sites, as Kysely sees it. Instants are milliseconds. */
export interface JournalTable {
  network_key: number
  /** Order of arrival within the network. */
  sequence: number
  id: string
  about: string
  kind: string
  at_ms: number
  by_person: string
  /** JSON. */
  body: string
  taken_back_by: string | null
  taken_back_at_ms: number | null
}
