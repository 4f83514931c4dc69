/** Tables of people and access as Kysely sees them. Days are epoch days, instants milliseconds. */
export interface PersonTable {
  id: string
  name: string
  role: string
  mail: string | null
  language: string
  added_at_ms: number
  last_seen_on: number | null
}

export interface PersonGaugeTable {
  person_id: string
  gauge_id: string
}

export interface PasswordTable {
  person_id: string
  hash: string
}

export interface SessionTable {
  token_hash: string
  person_id: string
  started_at_ms: number
  ends_at_ms: number
}

export interface SignInLinkTable {
  token_hash: string
  browser_hash: string
  person_id: string
  asked_at_ms: number
  ends_at_ms: number
}

export interface AuditTable {
  id: string
  at_ms: number
  person_id: string | null
  door: string
  act: string
  subject: string | null
  result: string
}

export interface AccessTables {
  person: PersonTable
  person_gauge: PersonGaugeTable
  password: PasswordTable
  session: SessionTable
  sign_in_link: SignInLinkTable
  audit: AuditTable
}
