import { existsSync } from 'node:fs'
import type { Ledger } from '../../ports/ledger.ts'
import { LedgerError } from '../../ports/ledgerError.ts'
import { SqlLedger } from '../sql/sqlLedger.ts'
import { migrate } from './migrate.ts'
import { connectionSettings, openDatabase } from './openDatabase.ts'
import { sqliteFailure } from './sqliteFailure.ts'
import { SqliteStore } from './sqliteStore.ts'

/**
 * Open a ledger file, bringing it up to date first.
 * @param options.create make the file where there is none (default true)
 * @throws {LedgerError} LEDGER_NOT_FOUND, LEDGER_NOT_OURS, LEDGER_NEWER, LEDGER_BUSY, LEDGER_CANNOT_WRITE, LEDGER_DAMAGED
 */
export async function openSqliteLedger(path: string, options: { create?: boolean } = {}): Promise<Ledger> {
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
    return new SqlLedger(new SqliteStore(path, writer), (error) => sqliteFailure(error, path))
  } catch (error) {
    writer?.close()
    throw sqliteFailure(error, path)
  }
}
