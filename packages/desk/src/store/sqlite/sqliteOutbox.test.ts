import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { outboxPromises } from '../outboxPromises.ts'
import { SqlLedger } from '../sql/sqlLedger.ts'
import { sqlOutbox } from '../sql/sqlOutbox.ts'
import { openSqliteStore } from './openSqliteStore.ts'

const asItIs = (error: unknown): unknown => error

async function opened() {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-outbox-'))
  const store = await openSqliteStore(join(folder, 'ledger.db'))
  const dispose = async (): Promise<void> => {
    await store.close()
    await rm(folder, { recursive: true })
  }
  return { store, ledger: new SqlLedger(store, asItIs), outbox: sqlOutbox(store, asItIs), dispose }
}

outboxPromises('SQLite', opened)

it('no program can change what happened to a message, nor make one unsent', async () => {
  const { store, ledger, outbox, dispose } = await opened()
  await ledger.saveNetwork({
    id: 'n',
    name: 'N',
    timeZone: 'UTC',
    readingTime: '07:00',
    acceptWindowMin: 120,
    unit: 'mm',
    language: 'en',
    docketBelow: 0.5,
  })
  const content = { kind: 'mail', to: 'a@example.org', subject: 's', text: 't', headers: {} } as const
  const common = { networkId: 'n', purpose: 'test', content, repeatable: false, isSecret: false, by: 'P' } as const
  const nowUtc = '2026-05-31T09:00:00Z'
  await outbox.queue([{ ...common, id: 'm', key: 'k', queuedAtUtc: nowUtc, notAfterUtc: null }])
  const ask = { networkId: 'n', kinds: ['mail'], nowUtc, leaseMs: 1000, limit: 1, newToken: () => 'token' } as const
  await outbox.claim(ask)
  await outbox.handOver('token', nowUtc, 1000)
  await outbox.end('token', { kind: 'sent', receipt: '250' }, nowUtc)
  const { db } = store
  await expect(db.updateTable('outgoing').set({ state: 'waiting' }).execute()).rejects.toThrow(/stays sent/)
  await expect(db.deleteFrom('outgoing').execute()).rejects.toThrow(/never deleted/)
  await expect(db.updateTable('outgoing_event').set({ by_name: 'Q' }).execute()).rejects.toThrow(/never changed/)
  await expect(db.deleteFrom('outgoing_event').execute()).rejects.toThrow(/never deleted/)
  await dispose()
})
