/** A sender of mail that is killed (SIGKILL) at any instant, over and over, against a real SMTP server. */
import { spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { NewOutgoing } from '../src/ports/outbox.ts'
import { openSqlitePorts } from '../src/store/sqlite/openSqlitePorts.ts'
import { type MailServer, openMailServer } from './support/mailServer.ts'
import { smallNetwork } from './support/smallNetwork.ts'

const KILLS = 14
const MESSAGES = 240
/** Longer than any lease: each run finds what the one before left behind. */
const LEASE_MS = 12 * 60_000
const child = fileURLToPath(new URL('./support/sendUntilKilled.ts', import.meta.url))
const desk = fileURLToPath(new URL('..', import.meta.url))

let folder: string
let path: string
let server: MailServer

/** @param stopAfter  mails received in this run before it is killed, and ms more; null lets it run to its end */
async function run(round: number, stopAfter: { mails: number; moreMs: number } | null): Promise<string | null> {
  const end = stopAfter === null ? ['once'] : []
  const words = ['--conditions=source', '--import', 'tsx', child, path, String(round * LEASE_MS), ...end]
  const running = spawn(process.execPath, words, { cwd: desk, stdio: ['ignore', 'ignore', 'inherit'] })
  const before = server.received.length
  const watch = setInterval(() => {
    if (stopAfter === null || server.received.length - before < stopAfter.mails) return
    clearInterval(watch)
    setTimeout(() => running.kill('SIGKILL'), stopAfter.moreMs)
  }, 1)
  const signal = await new Promise<string | null>((done) => running.on('close', (_, by) => done(by)))
  clearInterval(watch)
  return signal
}

describe('an outbox whose sender is killed under load', () => {
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'gaugewright-outbox-kill-'))
    path = join(folder, 'ledger.db')
    server = await openMailServer()
    const ports = await openSqlitePorts(path)
    const queuedAtUtc = new Date().toISOString()
    await ports.ledger.saveNetwork(smallNetwork(1).network)
    const settings = {
      host: '127.0.0.1',
      port: server.port,
      security: 'none',
      user: null,
      from: 'desk@small.example',
      fromName: '',
    } as const
    await ports.outgoingSettings.setMail('small', { settings, by: 'P', setAtUtc: queuedAtUtc })
    const messages = Array.from({ length: MESSAGES }, (_, index): NewOutgoing => {
      const content = {
        kind: 'mail',
        to: `p${index}@example.org`,
        subject: `No. ${index}`,
        text: 'T\n',
        headers: {},
      } as const
      const rest = { purpose: 'reminder', repeatable: false, isSecret: false, by: 'P', notAfterUtc: null } as const
      return { id: `m-${index}`, networkId: 'small', key: `key ${index}`, content, queuedAtUtc, ...rest }
    })
    await ports.outbox.queue(messages)
    await ports.ledger.close()
  })
  afterAll(async () => {
    await server.close()
    await rm(folder, { recursive: true })
  })

  it(`sends every message once or holds it for a person: none lost, none twice, over ${KILLS} kills`, {
    timeout: 300_000,
  }, async () => {
    for (let round = 0; round < KILLS; round++) {
      const stopAfter = { mails: 1 + ((round * 5) % 11), moreMs: (round * 7) % 17 }
      expect(await run(round, stopAfter), 'it did not end by itself').toBe('SIGKILL')
    }
    const early = server.received.length
    expect(early, 'there was something left to do').toBeLessThan(MESSAGES)
    expect(await run(KILLS, null)).toBeNull()
    const arrivals = new Map<string, number>()
    for (const { mail } of server.received) {
      const id = mail.messageId ?? ''
      arrivals.set(id, (arrivals.get(id) ?? 0) + 1)
    }
    expect([...arrivals.values()].filter((count) => count > 1)).toEqual([])
    const ports = await openSqlitePorts(path, { create: false })
    const messages = await ports.outbox.list('small', { limit: MESSAGES })
    const counts = await ports.outbox.counts('small')
    expect(messages).toHaveLength(MESSAGES)
    for (const { id, state } of messages) {
      expect(['sent', 'in doubt'], id).toContain(state)
      if (state === 'sent') expect(arrivals.get(`<${id}@small.example>`), id).toBe(1)
    }
    // At most the mails in hand at each kill.
    expect(counts['in doubt']).toBeLessThanOrEqual(4 * KILLS)
    expect(counts.sent).toBeGreaterThanOrEqual(MESSAGES - 4 * KILLS)
    await ports.ledger.close()
  })
})
