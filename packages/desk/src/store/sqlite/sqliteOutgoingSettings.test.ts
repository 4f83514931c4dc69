import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { outgoingSettingsPromises } from '../outgoingSettingsPromises.ts'
import { SqlLedger } from '../sql/sqlLedger.ts'
import { sqlOutgoingSettings } from '../sql/sqlOutgoingSettings.ts'
import { openSqliteStore } from './openSqliteStore.ts'
import { sqliteFailure } from './sqliteFailure.ts'

outgoingSettingsPromises('SQLite', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-settings-'))
  const store = await openSqliteStore(join(folder, 'ledger.db'))
  const readable = (error: unknown): unknown => sqliteFailure(error, 'ledger.db')
  return {
    ledger: new SqlLedger(store, readable),
    settings: sqlOutgoingSettings(store, readable),
    dispose: async () => {
      await store.close()
      await rm(folder, { recursive: true })
    },
  }
})
