import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { absencePromises } from '../absencePromises.ts'
import { sqlAbsences } from '../sql/sqlAbsences.ts'
import { SqlLedger } from '../sql/sqlLedger.ts'
import { openSqliteStore } from './openSqliteStore.ts'
import { sqliteFailure } from './sqliteFailure.ts'

absencePromises('SQLite', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-absences-'))
  const store = await openSqliteStore(join(folder, 'ledger.db'))
  const readable = (error: unknown): unknown => sqliteFailure(error, 'ledger.db')
  return {
    ledger: new SqlLedger(store, readable),
    absences: sqlAbsences(store, readable),
    dispose: async () => {
      await store.close()
      await rm(folder, { recursive: true })
    },
  }
})
