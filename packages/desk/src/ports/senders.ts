/** Keys of those who send and read by machine. A key itself is never kept, only its SHA-256 in hexadecimal. */
import type { KeyScope } from '@gaugewright/contract'

export interface SenderKey {
  id: string
  /** Who sends with it. */
  sender: string
  scopes: readonly KeyScope[]
  /** First characters of the key, to tell keys apart. */
  start: string
  keyHash: string
  madeAtUtc: string
  /** Person or door that made it. */
  madeBy: string
  revokedAtUtc: string | null
  /** To the day; null before its first use. */
  lastUsedOn: string | null
}

/** Every method rejects with a LedgerError, and then nothing has changed. What resolved is durable. */
export interface Senders {
  /** All keys ever made, oldest first. */
  keys(): Promise<SenderKey[]>
  /** ID_TAKEN where the id or the key is there already. */
  addKey(key: SenderKey): Promise<void>
  /** Revoked ones too. */
  keyByHash(keyHash: string): Promise<SenderKey | null>
  /** A key that is revoked already stays as it was. KEY_UNKNOWN */
  revokeKey(id: string, revokedAtUtc: string): Promise<SenderKey>
  usedOn(id: string, day: string): Promise<void>
}
