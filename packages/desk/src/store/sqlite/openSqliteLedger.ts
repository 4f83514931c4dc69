import type { Ledger } from '../../ports/ledger.ts'
import { SqlLedger } from '../sql/sqlLedger.ts'
import { openSqliteStore } from './openSqliteStore.ts'
import { sqliteFailure } from './sqliteFailure.ts'

/**
 * Open a ledger file, bringing it up to date first.
 * @param options.create make the file where there is none (default true)
 * @throws {LedgerError} as openSqliteStore
 */
export async function openSqliteLedger(path: string, options: { create?: boolean } = {}): Promise<Ledger> {
  return new SqlLedger(await openSqliteStore(path, options), (error) => sqliteFailure(error, path))
}
