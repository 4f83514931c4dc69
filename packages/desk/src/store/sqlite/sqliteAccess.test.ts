import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { accessPromises } from '../accessPromises.ts'
import { SqlAccess } from '../sql/sqlAccess.ts'
import { openDatabase } from './openDatabase.ts'
import { openSqliteStore } from './openSqliteStore.ts'
import { sqliteFailure } from './sqliteFailure.ts'

async function open() {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-access-'))
  const path = join(folder, 'ledger.db')
  const store = await openSqliteStore(path)
  const access = new SqlAccess(store, (error) => sqliteFailure(error, path))
  return {
    access,
    path,
    dispose: async () => {
      await store.close()
      await rm(folder, { recursive: true })
    },
  }
}

accessPromises('SQLite', open)

describe('the trail in a file', () => {
  it('is changed and shortened by nobody, whoever opens the file', async () => {
    const { access, path, dispose } = await open()
    const entry = { id: 'a1', atUtc: '2026-05-31T08:00:00Z', personId: 'p1', door: 'desk' as const, subject: null }
    await access.appendAudit({ ...entry, act: 'decide', result: 'done' })
    const other = openDatabase(path)
    expect(() => other.exec(`update audit set act = 'nothing'`)).toThrow('the trail is never changed')
    expect(() => other.exec('delete from audit')).toThrow('the trail is never shortened')
    other.close()
    await dispose()
  })
})
