/** What every outbox promises. Each adapter runs the same suite. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Ledger } from '../ports/ledger.ts'
import { LedgerError } from '../ports/ledgerError.ts'
import type { Claim, NewOutgoing, Outbox, OutboxAnswer } from '../ports/outbox.ts'

export interface OpenedOutbox {
  ledger: Ledger
  outbox: Outbox
  dispose: () => Promise<void>
}

const at = (minute: number, second = 0): string => new Date(Date.UTC(2026, 4, 31, 9, minute, second)).toISOString()
const leaseMs = 60_000

function mail(id: string, changes: Partial<NewOutgoing> = {}): NewOutgoing {
  return {
    id,
    networkId: 'north',
    key: `key of ${id}`,
    purpose: 'reminder',
    content: {
      kind: 'mail',
      to: `${id}@example.org`,
      subject: `About ${id}`,
      text: 'One\nTwo ñ\n',
      headers: { 'X-A': id },
    },
    repeatable: false,
    isSecret: false,
    by: 'A. Person',
    queuedAtUtc: at(0),
    notAfterUtc: null,
    ...changes,
  }
}

export function outboxPromises(name: string, open: () => Promise<OpenedOutbox>): void {
  describe(`the ${name} outbox`, () => {
    let opened: OpenedOutbox
    let outbox: Outbox
    let tokens = 0
    beforeEach(async () => {
      opened = await open()
      outbox = opened.outbox
      for (const id of ['north', 'south']) {
        await opened.ledger.saveNetwork({
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
    })
    afterEach(() => opened.dispose())

    const claim = (minute: number, limit = 10, networkId = 'north'): Promise<Claim[]> =>
      outbox.claim({
        networkId,
        kinds: ['mail', 'webhook', 'file'],
        nowUtc: at(minute),
        leaseMs,
        limit,
        newToken: () => `token-${++tokens}`,
      })
    const one = async (minute: number): Promise<Claim> => {
      const claims = await claim(minute, 1)
      if (claims[0] === undefined) throw new Error('nothing to claim')
      return claims[0]
    }
    const stateOf = async (id: string): Promise<string> => (await outbox.message('north', id))?.state ?? 'none'
    const codeOf = (answer: OutboxAnswer): string => (answer.ok ? answer.message.state : answer.problem.code)
    const told = async (id: string): Promise<string[]> =>
      (await outbox.events('north', id)).map(({ what, by }) => `${what} by ${by}`)

    it('gives a message back as it was queued, waiting, and counts it', async () => {
      const message = mail('one', { notAfterUtc: at(50), repeatable: true })
      expect(await outbox.queue([message])).toEqual({ queued: 1, already: 0 })
      expect(await outbox.message('north', 'one')).toEqual({
        ...message,
        state: 'waiting',
        attempts: 0,
        lastError: null,
        notBeforeUtc: at(0),
        changedAtUtc: at(0),
        sentAtUtc: null,
        receipt: null,
        isEmptied: false,
        isRestorable: false,
      })
      expect(await outbox.counts('north')).toMatchObject({ waiting: 1, sent: 0 })
      expect(await outbox.counts('south')).toMatchObject({ waiting: 0 })
      expect(await outbox.message('south', 'one')).toBeNull()
    })

    it('takes the same key once, in one delivery or two, and again never after it was sent', async () => {
      const twice = [mail('one'), mail('two', { key: 'key of one' })]
      expect(await outbox.queue(twice)).toEqual({ queued: 1, already: 1 })
      const { token } = await one(1)
      await outbox.handOver(token, at(1), leaseMs)
      await outbox.end(token, { kind: 'sent', receipt: '250 ok' }, at(1))
      expect(await outbox.queue([mail('three', { key: 'key of one' })])).toEqual({ queued: 0, already: 1 })
      expect(await outbox.queue([mail('four', { key: 'key of one', networkId: 'south' })])).toMatchObject({ queued: 1 })
      expect(await outbox.knownKeys('north', ['key of one', 'key of two'])).toEqual(new Set(['key of one']))
    })

    it('keeps a delivery whole or not at all', async () => {
      await outbox.queue([mail('one')])
      const broken = [mail('two'), mail('one', { key: 'another key' })]
      await expect(outbox.queue(broken)).rejects.toMatchObject({ problem: { code: 'ID_TAKEN' } })
      await expect(outbox.queue([mail('x', { networkId: 'nowhere' })])).rejects.toThrow(LedgerError)
      expect((await outbox.list('north', { limit: 9 })).map(({ id }) => id)).toEqual(['one'])
    })

    it('hands each message to one sender only, the oldest first, of the kinds asked for', async () => {
      const file = { kind: 'file', folder: '/f', name: 'n.txt', text: 't' } as const
      await outbox.queue([mail('a', { content: file }), mail('b'), mail('c'), mail('d')])
      const ask = { networkId: 'north', nowUtc: at(1), leaseMs, newToken: () => `token-${++tokens}` }
      const [first, second] = await Promise.all([
        outbox.claim({ ...ask, kinds: ['mail'], limit: 2 }),
        outbox.claim({ ...ask, kinds: ['mail'], limit: 2 }),
      ])
      const ids = [...first, ...second].map(({ message }) => message.id)
      expect(ids.sort()).toEqual(['b', 'c', 'd'])
      expect(await outbox.claim({ ...ask, kinds: ['mail'], limit: 9 })).toEqual([])
      expect(await outbox.claim({ ...ask, kinds: [], limit: 9 })).toEqual([])
      expect((await outbox.claim({ ...ask, kinds: ['file'], limit: 9 })).map(({ message }) => message.id)).toEqual([
        'a',
      ])
      expect(await claim(1, 9, 'south')).toEqual([])
    })

    it('hands out what somebody waits for before what was queued earlier', async () => {
      const purposes = ['reminder', 'sign-in', 'question', 'urgent report'] as const
      await outbox.queue(purposes.map((purpose) => mail(purpose, { purpose })))
      const order = (await claim(1)).map(({ message }) => message.id)
      expect(order).toEqual(['urgent report', 'sign-in', 'reminder', 'question'])
    })

    it('a lease that runs out before the handing over puts the message back, and the late sender is stopped', async () => {
      await outbox.queue([mail('one')])
      const late = await one(1)
      expect(await claim(1)).toEqual([])
      const next = await one(3)
      expect(next.message).toMatchObject({ id: 'one', attempts: 2 })
      expect(await outbox.handOver(late.token, at(3), leaseMs)).toBe(false)
      expect(await outbox.end(late.token, { kind: 'sent', receipt: 'x' }, at(3))).toBe(false)
      expect(await outbox.handOver(next.token, at(3), leaseMs)).toBe(true)
      expect(await outbox.handOver(next.token, at(3), leaseMs)).toBe(false)
    })

    it('a sender whose own lease has run out is stopped, though nobody else has come', async () => {
      await outbox.queue([mail('one')])
      const { token } = await one(1)
      expect(await outbox.handOver(token, at(2, 1), leaseMs)).toBe(false)
    })

    it('a sender that dies after the handing over leaves the message in doubt: nobody sends it again', async () => {
      await outbox.queue([mail('one')])
      const { token } = await one(1)
      await outbox.handOver(token, at(1), leaseMs)
      expect(await claim(3)).toEqual([])
      expect(await stateOf('one')).toBe('in doubt')
      expect(await claim(59)).toEqual([])
    })

    it('a late "sent" ends the doubt, and whatever was done about it meanwhile', async () => {
      await outbox.queue([mail('one'), mail('two')])
      const claims = await claim(1)
      for (const { token } of claims) await outbox.handOver(token, at(1), leaseMs)
      await claim(3)
      await outbox.retry('north', 'two', 'A. Person', at(4))
      for (const { token } of claims) {
        expect(await outbox.end(token, { kind: 'sent', receipt: '250 late' }, at(5))).toBe(true)
      }
      expect([await stateOf('one'), await stateOf('two')]).toEqual(['sent', 'sent'])
      expect(await claim(6)).toEqual([])
    })

    it('a repeatable message in doubt is sent again under the same id', async () => {
      await outbox.queue([mail('one', { repeatable: true })])
      const first = await one(1)
      await outbox.handOver(first.token, at(1), leaseMs)
      const second = await one(3)
      expect(second.message).toMatchObject({ id: 'one', attempts: 2 })
      await outbox.handOver(second.token, at(3), leaseMs)
      await outbox.end(second.token, { kind: 'in doubt', error: 'no answer', notBeforeUtc: at(9) }, at(3))
      expect(await claim(8)).toEqual([])
      expect((await one(9)).message.lastError).toBe('no answer')
    })

    it('says how it ended: sent with the answer, put back until a time, failed, in doubt', async () => {
      await outbox.queue([mail('a'), mail('b'), mail('c'), mail('d')])
      const [a, b, c, d] = await claim(1)
      for (const { token } of [a, b, c, d] as Claim[]) await outbox.handOver(token, at(1), leaseMs)
      await outbox.end(a?.token ?? '', { kind: 'sent', receipt: '250 taken' }, at(2))
      await outbox.end(b?.token ?? '', { kind: 'again', error: '451 later', notBeforeUtc: at(7) }, at(2))
      await outbox.end(c?.token ?? '', { kind: 'failed', error: '550 unknown' }, at(2))
      await outbox.end(d?.token ?? '', { kind: 'in doubt', error: 'cut off', notBeforeUtc: at(7) }, at(2))
      expect(await outbox.message('north', 'a')).toMatchObject({
        state: 'sent',
        sentAtUtc: at(2),
        receipt: '250 taken',
      })
      expect(await outbox.message('north', 'b')).toMatchObject({ state: 'waiting', lastError: '451 later' })
      expect(await outbox.message('north', 'c')).toMatchObject({ state: 'failed', lastError: '550 unknown' })
      expect(await outbox.message('north', 'd')).toMatchObject({ state: 'in doubt', lastError: 'cut off' })
      expect(await claim(6)).toEqual([])
      expect((await claim(7)).map(({ message }) => message.id)).toEqual(['b'])
      expect(await outbox.end(a?.token ?? '', { kind: 'failed', error: 'x' }, at(8))).toBe(false)
      expect((await outbox.list('north', { states: ['failed', 'in doubt'], limit: 9 })).map(({ id }) => id)).toEqual([
        'd',
        'c',
      ])
      expect(await outbox.list('north', { limit: 1 })).toHaveLength(1)
    })

    it('cannot be sent without having been handed over', async () => {
      await outbox.queue([mail('one')])
      const { token } = await one(1)
      expect(await outbox.end(token, { kind: 'sent', receipt: 'x' }, at(1))).toBe(false)
      expect(await stateOf('one')).toBe('sending')
    })

    it('discards what has become too late, and does not send it', async () => {
      await outbox.queue([mail('one', { notAfterUtc: at(10) })])
      expect(await claim(11)).toEqual([])
      expect(await outbox.message('north', 'one')).toMatchObject({ state: 'discarded' })
      expect(codeOf(await outbox.restore('north', 'one', 'P', at(12)))).toBe('OUTGOING_STATE')
      await outbox.queue([mail('two', { notAfterUtc: at(10), isSecret: true })])
      await claim(12)
      expect(await outbox.message('north', 'two')).toMatchObject({ isEmptied: true, content: { text: '' } })
    })

    it('a person retries and discards, takes a discarding back, and each step is told with who and when', async () => {
      await outbox.queue([mail('one')])
      const { token } = await one(1)
      await outbox.handOver(token, at(1), leaseMs)
      await outbox.end(token, { kind: 'failed', error: '550 unknown' }, at(1))
      expect(codeOf(await outbox.discard('north', 'one', 'P', at(2)))).toBe('discarded')
      expect(await outbox.message('north', 'one')).toMatchObject({ isRestorable: true })
      expect(await claim(3)).toEqual([])
      expect(codeOf(await outbox.restore('north', 'one', 'Q', at(4)))).toBe('failed')
      expect(codeOf(await outbox.retry('north', 'one', 'R', at(5)))).toBe('waiting')
      const again = await one(5)
      expect(codeOf(await outbox.discard('north', 'one', 'P', at(5)))).toBe('OUTGOING_STATE')
      await outbox.handOver(again.token, at(5), leaseMs)
      await outbox.end(again.token, { kind: 'sent', receipt: '250' }, at(5))
      for (const step of ['retry', 'discard', 'restore'] as const) {
        expect(codeOf(await outbox[step]('north', 'one', 'P', at(6)))).toBe('OUTGOING_STATE')
        expect(codeOf(await outbox[step]('north', 'other', 'P', at(6)))).toBe('OUTGOING_UNKNOWN')
      }
      expect(await told('one')).toEqual([
        'queued by A. Person',
        'claimed by outbox',
        'handing over by outbox',
        'failed by outbox',
        'discarded by P',
        'restored by Q',
        'retried by R',
        'claimed by outbox',
        'handing over by outbox',
        'sent by outbox',
      ])
    })

    it('a message that a person discarded while its sender slept is not sent', async () => {
      await outbox.queue([mail('one')])
      const { token } = await one(1)
      await outbox.claim({ networkId: 'north', kinds: ['mail'], nowUtc: at(3), leaseMs, limit: 0, newToken: () => 'x' })
      expect(codeOf(await outbox.discard('north', 'one', 'P', at(3)))).toBe('discarded')
      expect(await outbox.handOver(token, at(3), leaseMs)).toBe(false)
    })

    it('empties a secret once it is sent, and then it can be sent no more', async () => {
      await outbox.queue([mail('one', { isSecret: true })])
      const { token, message } = await one(1)
      expect(message.content).toMatchObject({ text: 'One\nTwo ñ\n' })
      await outbox.handOver(token, at(1), leaseMs)
      await outbox.end(token, { kind: 'sent', receipt: '250' }, at(1))
      expect(await outbox.message('north', 'one')).toMatchObject({
        state: 'sent',
        isEmptied: true,
        content: { to: 'one@example.org', subject: '', text: '', headers: {} },
      })
    })

    it('forgets a recipient wholly, however the address was written, and lets nothing more go to them', async () => {
      const to = (address: string) => ({ kind: 'mail', to: address, subject: 'S', text: 'T', headers: {} }) as const
      await outbox.queue([
        mail('one', { content: to('Ada@Example.org') }),
        mail('two', { content: to('ada@example.org') }),
        mail('other'),
      ])
      const { token } = await one(1)
      await outbox.handOver(token, at(1), leaseMs)
      await outbox.end(token, { kind: 'sent', receipt: '250 for Ada@example.org' }, at(1))
      expect((await outbox.toRecipient('north', 'ADA@example.org')).map(({ id }) => id)).toEqual(['one', 'two'])
      expect(await outbox.forgetRecipient('north', 'ada@example.org', 'P', at(2))).toBe(2)
      expect(await outbox.toRecipient('north', 'ada@example.org')).toEqual([])
      const events = [...(await outbox.events('north', 'one')), ...(await outbox.events('north', 'two'))]
      expect(events.map(({ detail }) => detail)).toContain('250 for …')
      const all = JSON.stringify([events, await outbox.list('north', { limit: 9 })])
      expect(all.toLowerCase()).not.toContain('ada@')
      expect((await claim(3)).map(({ message }) => message.id)).toEqual(['other'])
      expect(codeOf(await outbox.retry('north', 'two', 'P', at(4)))).toBe('OUTGOING_EMPTIED')
    })
  })
}
