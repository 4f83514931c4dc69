import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { journalPromises } from '../journalPromises.ts'
import { sqlJournal } from '../sql/sqlJournal.ts'
import { SqlLedger } from '../sql/sqlLedger.ts'
import { openSqliteStore } from './openSqliteStore.ts'
import { sqliteFailure } from './sqliteFailure.ts'

journalPromises('SQLite', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-journal-'))
  const store = await openSqliteStore(join(folder, 'ledger.db'))
  const readable = (error: unknown): unknown => sqliteFailure(error, 'ledger.db')
  return {
    ledger: new SqlLedger(store, readable),
    journal: sqlJournal(store, readable),
    dispose: async () => {
      await store.close()
      await rm(folder, { recursive: true })
    },
  }
})
