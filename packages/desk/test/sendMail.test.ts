/** Mail from the outbox to a real SMTP server on loopback, and what becomes of it when that server misbehaves. */
import type { MailSettings } from '@gaugewright/contract'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { sendDue } from '../src/app/outgoing/sendDue.ts'
import type { NewOutgoing } from '../src/ports/outbox.ts'
import type { Ports } from '../src/ports/ports.ts'
import { openMemoryLedger } from '../src/store/memory/memoryLedger.ts'
import { type MailServer, openMailServer, type Trouble } from './support/mailServer.ts'
import { portsOver } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'

let server: MailServer
let ports: Ports
let nowMs = Date.parse('2026-05-31T10:00:00Z')

beforeEach(async () => {
  server = await openMailServer({ user: 'desk', password: 'secret' })
  const ledger = openMemoryLedger()
  const small = smallNetwork(1)
  await ledger.saveNetwork(small.network)
  nowMs = Date.parse('2026-05-31T10:00:00Z')
  ports = portsOver(ledger, {
    clock: { nowUtc: () => new Date(nowMs).toISOString() },
    outgoingSecrets: { smtpPassword: 'secret', webhookSecret: null },
  })
})
afterEach(() => server.close())

async function setMail(change: Partial<MailSettings> = {}): Promise<void> {
  const settings: MailSettings = {
    host: '127.0.0.1',
    port: server.port,
    security: 'none',
    user: 'desk',
    from: 'desk@small.example',
    fromName: 'Small Hills',
    ...change,
  }
  await ports.outgoingSettings.setMail('small', { settings, by: 'P', setAtUtc: ports.clock.nowUtc() })
}

async function queue(id: string, change: Partial<NewOutgoing> = {}): Promise<void> {
  await ports.outbox.queue([
    {
      id,
      networkId: 'small',
      key: id,
      purpose: 'reminder',
      content: {
        kind: 'mail',
        to: 'ada@example.org',
        subject: 'Tu lectura de hoy — ¿cuánta lluvia?',
        text: 'Buenos días:\n\n.una línea con punto\n\nGracias\n',
        headers: { 'List-Unsubscribe': '<https://desk.example/x>' },
      },
      repeatable: false,
      isSecret: false,
      by: 'P',
      queuedAtUtc: ports.clock.nowUtc(),
      notAfterUtc: null,
      ...change,
    },
  ])
}

const message = async (id: string) => await ports.outbox.message('small', id)

describe('mail', () => {
  it('waits, and nothing connects anywhere, until mail is set up', async () => {
    await queue('one')
    expect(await sendDue(ports)).toBe(0)
    expect(server.connections).toBe(0)
    expect(await message('one')).toMatchObject({ state: 'waiting', attempts: 0 })
    await setMail()
    expect(await sendDue(ports)).toBe(1)
  })

  it('waits where the password is not in the environment', async () => {
    ports.outgoingSecrets = { smtpPassword: null, webhookSecret: null }
    await setMail()
    await queue('one')
    expect([await sendDue(ports), server.connections]).toEqual([0, 0])
  })

  it('arrives once and as it was written, under a Message-ID and a date of its own', async () => {
    await setMail()
    await queue('one')
    expect(await sendDue(ports)).toBe(1)
    expect(await sendDue(ports)).toBe(0)
    expect(server.received).toHaveLength(1)
    const { to, mail, raw } = server.received[0]!
    expect(to).toEqual(['ada@example.org'])
    expect(mail.messageId).toBe('<one@small.example>')
    expect(mail.date?.toISOString()).toBe('2026-05-31T10:00:00.000Z')
    expect(mail.subject).toBe('Tu lectura de hoy — ¿cuánta lluvia?')
    expect(mail.text?.trimEnd()).toBe('Buenos días:\n\n.una línea con punto\n\nGracias')
    expect(mail.from?.text).toBe('"Small Hills" <desk@small.example>')
    expect(raw).toMatch(/^List-Unsubscribe: <https:\/\/desk\.example\/x>\r?$/m)
    expect(raw).toMatch(/^Auto-Submitted: auto-generated\r?$/m)
    expect(await message('one')).toMatchObject({ state: 'sent', attempts: 1, lastError: null })
    expect((await message('one'))?.receipt).toMatch(/^250 .*taken/)
  })

  it('a header line cannot be smuggled in by a subject or an address', async () => {
    await setMail()
    const bad = { kind: 'mail', to: 'ada@example.org', subject: 'Hi\r\nBcc: eve@example.org', text: 'T', headers: {} }
    await queue('one', { content: bad as NewOutgoing['content'] })
    await sendDue(ports)
    expect(server.received[0]?.to).toEqual(['ada@example.org'])
    expect(server.received[0]?.mail.bcc).toBeUndefined()
  })

  it('a server that takes the message and dies before it answers: in doubt, and never sent again by itself', async () => {
    await setMail()
    await queue('one')
    server.trouble = 'drop after data'
    expect(await sendDue(ports)).toBe(0)
    expect(server.received).toHaveLength(1)
    expect(await message('one')).toMatchObject({ state: 'in doubt' })
    server.trouble = 'none'
    for (let hour = 0; hour < 48; hour++) {
      nowMs += 3_600_000
      await sendDue(ports)
    }
    expect(server.received).toHaveLength(1)
    expect(await ports.outbox.retry('small', 'one', 'P', ports.clock.nowUtc())).toMatchObject({ ok: true })
    expect(await sendDue(ports)).toBe(1)
    const ids = server.received.map(({ mail }) => mail.messageId)
    expect(ids, 'the recipient’s mail program can tell that they are one').toEqual([
      '<one@small.example>',
      '<one@small.example>',
    ])
  })

  it('a server that dies within the message certainly has not taken it: it is sent again, later', async () => {
    await setMail()
    const text = 'A long line of a long letter, again and again.\n'.repeat(200_000)
    await queue('one', { content: { kind: 'mail', to: 'ada@example.org', subject: 'Long', text, headers: {} } })
    server.trouble = 'drop within data'
    expect(await sendDue(ports)).toBe(0)
    expect(await message('one')).toMatchObject({ state: 'waiting', attempts: 1 })
    server.trouble = 'none'
    nowMs += 61_000
    expect(await sendDue(ports)).toBe(1)
    expect(server.received).toHaveLength(1)
  })

  it.each<[Trouble, string, RegExp]>([
    ['refuse recipient', 'failed', /550 5\.1\.1 no such mailbox/],
    ['refuse message', 'failed', /554 5\.7\.1 not wanted/],
    ['try later', 'waiting', /451 4\.2\.0 greylisted/],
  ])('%s: %s, with the answer of the server', async (trouble, state, error) => {
    await setMail()
    await queue('one')
    server.trouble = trouble
    await sendDue(ports)
    const after = await message('one')
    expect(after?.state).toBe(state)
    expect(after?.lastError).toMatch(error)
    server.trouble = 'none'
    await sendDue(ports)
    expect(server.received, 'not before its time').toHaveLength(0)
    nowMs += 61_000
    await sendDue(ports)
    expect(server.received).toHaveLength(state === 'waiting' ? 1 : 0)
  })

  it('no server there, or the wrong password: every message waits, and none fails for it', async () => {
    await setMail()
    await queue('one')
    ports.outgoingSecrets = { smtpPassword: 'wrong', webhookSecret: null }
    await sendDue(ports)
    expect(await message('one')).toMatchObject({ state: 'waiting' })
    expect((await message('one'))?.lastError).toMatch(/535 5\.7\.8 wrong password/)
    ports.outgoingSecrets = { smtpPassword: 'secret', webhookSecret: null }
    const { port } = server
    await server.close()
    nowMs += 61_000
    await setMail({ port })
    await sendDue(ports)
    expect(await message('one')).toMatchObject({ state: 'waiting', attempts: 2 })
    expect((await message('one'))?.lastError).toMatch(/ECONNREFUSED/)
  })

  it('TLS that was asked for and is not offered: nothing is said in the clear', async () => {
    await setMail({ security: 'starttls' })
    await queue('one')
    await sendDue(ports)
    expect(await message('one')).toMatchObject({ state: 'waiting' })
    expect(server.received).toHaveLength(0)
  })

  it('a sender whose claim was taken from it stops before the end of the message', async () => {
    await setMail()
    await queue('one')
    const { handOver } = ports.outbox
    ports.outbox.handOver = async () => false
    expect(await sendDue(ports)).toBe(0)
    expect(server.received).toHaveLength(0)
    ports.outbox.handOver = handOver
  })

  it('a hundred mails by three senders at once arrive once each', async () => {
    await setMail()
    for (let index = 0; index < 100; index++) await queue(`mail-${index}`)
    const sent = await Promise.all([sendDue(ports), sendDue(ports), sendDue(ports)])
    expect(sent.reduce((sum, count) => sum + count, 0)).toBe(100)
    expect(new Set(server.received.map(({ mail }) => mail.messageId)).size).toBe(100)
    expect(server.received).toHaveLength(100)
  })
})
