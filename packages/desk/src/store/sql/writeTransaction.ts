import type { Kysely } from 'kysely'
import type { AppendResult } from '../../ports/ledger.ts'
import type { ReadingTable, Tables } from './tables.ts'

/** A reading that still has no version; `supersedes` only as the caller gave it. */
export type NewReadingRow = Omit<ReadingTable, 'version'>

/**
 * What differs from database to database: how writing begins and ends, and the quick way to store many readings. One
 * transaction is open at a time; whoever asks for the next waits.
 */
export interface WriteTransaction {
  db: Kysely<Tables>
  appendReadings(rows: readonly NewReadingRow[]): Promise<AppendResult>
  /** Durable when it resolves. */
  commit(): Promise<void>
  rollback(): Promise<void>
}

export interface Store {
  /** For reading only; sees what is committed. */
  db: Kysely<Tables>
  /**
   * @param how  `together`: a few rows, done without waiting for anything else; may become durable by one commit with
   *   others that come in at the same time. `alone` when left out.
   */
  begin(how?: 'alone' | 'together'): Promise<WriteTransaction>
  close(): Promise<void>
}
