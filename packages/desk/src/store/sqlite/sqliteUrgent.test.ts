import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { SqlLedger } from '../sql/sqlLedger.ts'
import { SqlUrgent } from '../sql/sqlUrgent.ts'
import { urgentPromises } from '../urgentPromises.ts'
import { openDatabase } from './openDatabase.ts'
import { openSqliteStore } from './openSqliteStore.ts'
import { sqliteFailure } from './sqliteFailure.ts'
import type { SqliteStore } from './sqliteStore.ts'

async function open() {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-urgent-'))
  const path = join(folder, 'ledger.db')
  const readable = (error: unknown) => sqliteFailure(error, path)
  let store: SqliteStore = await openSqliteStore(path)
  const ledger = new SqlLedger(store, readable)
  for (const id of ['north', 'south']) {
    await ledger.saveNetwork({
      id,
      name: id,
      timeZone: 'UTC',
      readingTime: '07:00',
      acceptWindowMin: 120,
      unit: 'mm',
      language: 'en',
      docketBelow: 0.5,
    })
  }
  return {
    path,
    urgent: new SqlUrgent(store, readable),
    reopen: async () => {
      await store.close()
      store = await openSqliteStore(path)
      return new SqlUrgent(store, readable)
    },
    dispose: async () => {
      await store.close()
      await rm(folder, { recursive: true })
    },
  }
}

urgentPromises('SQLite', open)

describe('urgent reports in a file', () => {
  it('are changed and deleted by nobody, whoever opens the file; a network must be there', async () => {
    const { path, urgent, dispose } = await open()
    const report = { id: 'x', seen: {} } as never
    const filing = { id: 'x', reportId: 'x', atUtc: '2026-05-31T15:00:00Z', by: 'A', byPersonId: null, report } as const
    await urgent.file('north', { ...filing, what: 'filed' })
    await expect(urgent.file('nowhere', { ...filing, what: 'filed' })).rejects.toThrow('NETWORK_UNKNOWN')
    const other = openDatabase(path)
    expect(() => other.exec(`update urgent_event set body = '{}'`)).toThrow('never changed')
    expect(() => other.exec(`update urgent_event set by_name = 'B'`)).toThrow('never changed')
    expect(() => other.exec('delete from urgent_event')).toThrow('never deleted')
    other.close()
    await dispose()
  })
})
