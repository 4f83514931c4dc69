/** Webhook calls to a real server on loopback, and files into a real folder. */
import { createHmac } from 'node:crypto'
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { sendDue } from '../src/app/outgoing/sendDue.ts'
import { carryFile } from '../src/carriers/carryFile.ts'
import type { NewOutgoing, OutgoingContent } from '../src/ports/outbox.ts'
import type { Ports } from '../src/ports/ports.ts'
import { openMemoryLedger } from '../src/store/memory/memoryLedger.ts'
import { portsOver } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { tempFiles } from './support/tempFiles.ts'

const files = tempFiles()
const secret = 'a secret of the receiver and the desk'
let ports: Ports
let nowMs: number
let server: Server
let url: string
let calls: { headers: Record<string, unknown>; body: string }[]
let answer: number | 'hang up'

beforeEach(async () => {
  nowMs = Date.parse('2026-05-31T10:00:00Z')
  const ledger = openMemoryLedger()
  await ledger.saveNetwork(smallNetwork(1).network)
  ports = portsOver(ledger, {
    clock: { nowUtc: () => new Date(nowMs).toISOString() },
    outgoingSecrets: { smtpPassword: null, webhookSecret: secret },
  })
  calls = []
  answer = 204
  server = createServer((request, response) => {
    let body = ''
    request.on('data', (part) => {
      body += part
    })
    request.on('end', () => {
      calls.push({ headers: request.headers, body })
      if (answer === 'hang up') request.socket.destroy()
      else response.writeHead(answer, { location: 'http://127.0.0.1:1/' }).end()
    })
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/in`
})
afterEach(() => new Promise<void>((done) => void server.close(() => done())))

async function queue(id: string, content: OutgoingContent, change: Partial<NewOutgoing> = {}): Promise<void> {
  const rest = { purpose: 'urgent report', repeatable: true, isSecret: false, by: 'P', notAfterUtc: null } as const
  const queuedAtUtc = ports.clock.nowUtc()
  await ports.outbox.queue([{ id, networkId: 'small', key: id, content, queuedAtUtc, ...rest, ...change }])
}
const webhook = (): OutgoingContent => ({ kind: 'webhook', url, body: '{"stoneMm":25.4}' })
const message = async (id: string) => await ports.outbox.message('small', id)

describe('a webhook', () => {
  it('gets the body byte for byte, with id, time and a signature that it can work out itself', async () => {
    await queue('one', webhook())
    expect(await sendDue(ports)).toBe(1)
    const { headers, body } = calls[0]!
    expect(body).toBe('{"stoneMm":25.4}')
    expect(headers['webhook-id']).toBe('one')
    const timestamp = String(headers['webhook-timestamp'])
    expect(Math.abs(Number(timestamp) - Date.now() / 1000)).toBeLessThan(60)
    const own = createHmac('sha256', secret).update(`one.${timestamp}.${body}`).digest('base64')
    expect(headers['webhook-signature']).toBe(`v1,${own}`)
    expect(await message('one')).toMatchObject({ state: 'sent', receipt: 'HTTP 204' })
  })

  it('is not called without a secret to sign with', async () => {
    ports.outgoingSecrets = { smtpPassword: null, webhookSecret: null }
    await queue('one', webhook())
    expect([await sendDue(ports), calls.length, (await message('one'))?.state]).toEqual([0, 0, 'waiting'])
  })

  it.each([
    [500, 'waiting'],
    [503, 'waiting'],
    [429, 'waiting'],
    [302, 'failed'],
    [400, 'failed'],
    [410, 'failed'],
  ])('that answers %i leaves the message %s', async (status, state) => {
    answer = status
    await queue('one', webhook())
    await sendDue(ports)
    expect(await message('one')).toMatchObject({ state, lastError: `HTTP ${status}`, attempts: 1 })
    expect(calls).toHaveLength(1)
  })

  it('is tried again after 1, 2, 4 minutes, under the same id, until it answers; every attempt is in the log', async () => {
    answer = 503
    await queue('one', webhook())
    for (const minutes of [0, 1, 2, 4]) {
      nowMs += minutes * 60_000 - 1
      await sendDue(ports)
      nowMs += 1
      if (minutes === 4) answer = 200
      await sendDue(ports)
    }
    expect(calls.map(({ headers }) => headers['webhook-id'])).toEqual(['one', 'one', 'one', 'one'])
    expect(await message('one')).toMatchObject({ state: 'sent', attempts: 4 })
    const told = (await ports.outbox.events('small', 'one')).map(({ what }) => what)
    expect(told.filter((what) => what === 'put back')).toHaveLength(3)
  })

  it('that hangs up without an answer gets it again where that does no harm, and not where it would', async () => {
    answer = 'hang up'
    await queue('harmless', webhook())
    await queue('text message', webhook(), { repeatable: false })
    await sendDue(ports)
    expect((await message('harmless'))?.state).toBe('waiting')
    expect((await message('text message'))?.state).toBe('in doubt')
  })

  it('that is not there has certainly got nothing', async () => {
    await new Promise<void>((done) => void server.close(() => done()))
    await queue('one', webhook(), { repeatable: false })
    await sendDue(ports)
    expect(await message('one')).toMatchObject({ state: 'waiting' })
  })
})

describe('a watched folder', () => {
  it('gets the file whole under its name, and nothing else is left there', async () => {
    const folder = join(files.folder, 'watched', 'deep')
    await queue('one', { kind: 'file', folder, name: 'report.txt', text: 'ñ line\n' })
    expect(await sendDue(ports)).toBe(1)
    expect(await readdir(folder)).toEqual(['report.txt'])
    expect(await readFile(join(folder, 'report.txt'), 'utf8')).toBe('ñ line\n')
  })

  it('keeps a file of that name that says something else, and takes its own for what it is', async () => {
    const folder = join(files.folder, 'taken')
    await mkdir(folder)
    await writeFile(join(folder, 'a.txt'), 'other')
    await writeFile(join(folder, 'b.txt'), 'same')
    await queue('a', { kind: 'file', folder, name: 'a.txt', text: 'new' })
    await queue('b', { kind: 'file', folder, name: 'b.txt', text: 'same' })
    await sendDue(ports)
    expect([(await message('a'))?.state, (await message('b'))?.state]).toEqual(['failed', 'sent'])
    expect(await readFile(join(folder, 'a.txt'), 'utf8')).toBe('other')
  })

  it('gets no file outside it, whatever the name', async () => {
    for (const name of ['../x.txt', 'a/b.txt', 'a\\b.txt', '.hidden', '', '..']) {
      const carried = await carryFile(
        { kind: 'file', folder: join(files.folder, 'in'), name, text: 't' },
        { messageId: 'm', queuedAtUtc: '', beforeTaken: async () => true },
      )
      expect(carried.kind, name).toBe('failed')
    }
  })

  it('sees no part of a file whose sender was stopped', async () => {
    const folder = join(files.folder, 'stopped')
    const ask = { messageId: 'm', queuedAtUtc: '', beforeTaken: async () => false }
    expect(await carryFile({ kind: 'file', folder, name: 'a.txt', text: 't' }, ask)).toEqual({ kind: 'stopped' })
    expect(await readdir(folder)).toEqual([])
  })

  it('that cannot be written leaves the message waiting', async () => {
    const file = join(files.folder, 'no-folder')
    await writeFile(file, '')
    await queue('one', { kind: 'file', folder: file, name: 'a.txt', text: 't' })
    await sendDue(ports)
    expect(await message('one')).toMatchObject({ state: 'waiting', attempts: 1 })
  })
})
