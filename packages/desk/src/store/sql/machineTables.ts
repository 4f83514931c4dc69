/** Tables of senders' keys and deliveries as Kysely sees them. Days are epoch days, instants milliseconds. */
export interface SenderKeyTable {
  id: string
  sender: string
  /** Parted by blanks. */
  scopes: string
  start: string
  key_hash: string
  made_at_ms: number
  made_by: string
  revoked_at_ms: number | null
  last_used_on: number | null
}

export interface DeliveryTable {
  network_key: number
  key: string
  body_hash: string
  sender: string
  name: string
  received_at_ms: number
  /** Gzip of the text. */
  answer: Uint8Array
}

export interface MachineTables {
  sender_key: SenderKeyTable
  delivery: DeliveryTable
}
