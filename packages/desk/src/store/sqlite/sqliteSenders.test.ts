import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { senderPromises } from '../senderPromises.ts'
import { SqlSenders } from '../sql/sqlSenders.ts'
import { openSqliteStore } from './openSqliteStore.ts'
import { sqliteFailure } from './sqliteFailure.ts'

senderPromises('SQLite', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-senders-'))
  const path = join(folder, 'ledger.db')
  const store = await openSqliteStore(path)
  return {
    senders: new SqlSenders(store, (error) => sqliteFailure(error, path)),
    close: async () => {
      await store.close()
      await rm(folder, { recursive: true })
    },
  }
})
