import { existsSync } from 'node:fs'
import { LedgerError } from '../../ports/ledgerError.ts'
import { migrate } from './migrate.ts'
import { connectionSettings, openDatabase } from './openDatabase.ts'
import { sqliteFailure } from './sqliteFailure.ts'
import { SqliteStore } from './sqliteStore.ts'

/**
 * Open a ledger file for the adapters that share it (ledger, photos and what else is kept there), bringing it up to date
 * first. Whoever opens it closes it once, after all of them.
 * @param options.create make the file where there is none (default true)
 * @throws {LedgerError} LEDGER_NOT_FOUND, LEDGER_NOT_OURS, LEDGER_NEWER, LEDGER_BUSY, LEDGER_CANNOT_WRITE, LEDGER_DAMAGED
 */
export async function openSqliteStore(path: string, options: { create?: boolean } = {}): Promise<SqliteStore> {
  if (options.create === false && !existsSync(path)) {
    throw new LedgerError(
      'LEDGER_NOT_FOUND',
      `There is no ledger "${path}".`,
      'Name it with --db, or make one: gaugewright import GAUGES.csv, or gaugewright demo.',
    )
  }
  let writer: ReturnType<typeof openDatabase> | null = null
  try {
    writer = openDatabase(path)
    writer.exec('pragma busy_timeout = 10000')
    migrate(writer, path)
    writer.exec(connectionSettings)
    return new SqliteStore(path, writer)
  } catch (error) {
    writer?.close()
    throw sqliteFailure(error, path)
  }
}
