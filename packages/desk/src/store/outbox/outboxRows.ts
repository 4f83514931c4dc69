import type { OutgoingEvent, OutgoingKind, OutgoingState } from '../../ports/outbox.ts'
import type { OutgoingRecord } from './outgoingRecord.ts'

/** What an outbox asks of the place where its records lie. */
export interface OutboxReading {
  byId(networkId: string, id: string): Promise<OutgoingRecord | null>
  byToken(token: string): Promise<OutgoingRecord | null>
  knownKeys(networkId: string, keys: readonly string[]): Promise<Set<string>>
  /** Sending or waiting, of these kinds, oldest first: waiting only if `notBeforeUtc` or `notAfterUtc` has come. */
  open(networkId: string, kinds: readonly OutgoingKind[], nowUtc: string): Promise<OutgoingRecord[]>
  toRecipient(networkId: string, recipient: string): Promise<OutgoingRecord[]>
  list(networkId: string, states: readonly OutgoingState[], limit: number): Promise<OutgoingRecord[]>
  counts(networkId: string): Promise<Map<OutgoingState, number>>
  events(networkId: string, id: string): Promise<OutgoingEvent[]>
}

export interface OutboxWriting extends OutboxReading {
  /** LedgerError NETWORK_UNKNOWN, ID_TAKEN */
  insert(record: OutgoingRecord): Promise<void>
  update(record: OutgoingRecord): Promise<void>
  addEvent(networkId: string, event: OutgoingEvent): Promise<void>
}

export interface OutboxRows {
  read: OutboxReading
  /** One whole transaction, alone: kept when `work` resolves, gone without a trace when it does not. */
  write<T>(work: (rows: OutboxWriting) => Promise<T>): Promise<T>
}
