import type { Ports } from '../../ports/ports.ts'
import { SqlLedger } from '../sql/sqlLedger.ts'
import { openSqliteStore } from './openSqliteStore.ts'
import { sqliteFailure } from './sqliteFailure.ts'
import { sqlitePhotos } from './sqlitePhotos.ts'

/**
 * Everything that one ledger file keeps, over one pair of connections; closing the ledger closes all.
 * @throws {LedgerError} as openSqliteStore
 */
export async function openSqlitePorts(
  path: string,
  options: { create?: boolean } = {},
): Promise<Pick<Ports, 'ledger' | 'photos'>> {
  const store = await openSqliteStore(path, options)
  return {
    ledger: new SqlLedger(store, (error) => sqliteFailure(error, path)),
    photos: sqlitePhotos(store, path),
  }
}
