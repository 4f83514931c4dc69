import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { storePromises } from '../storePromises.ts'
import { openSqliteLedger } from './openSqliteLedger.ts'

storePromises('SQLite', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-ledger-'))
  const ledger = await openSqliteLedger(join(folder, 'ledger.db'))
  return {
    ledger,
    dispose: async () => {
      await ledger.close()
      await rm(folder, { recursive: true })
    },
  }
})
