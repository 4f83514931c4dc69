import type { OutboxAnswer, Reminded } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'
import { messages } from '../../words/messages.ts'
import { mailGap, recipientOf, troublesOf, whomText } from './outgoingView.ts'

const { outgoing: en } = messages.en
const ready = { isReady: true, code: null }
const outbox = (change: Partial<OutboxAnswer> = {}): OutboxAnswer => ({
  counts: { waiting: 0, sending: 0, sent: 0, failed: 0, 'in doubt': 0, discarded: 0 },
  carriers: {
    mail: { isReady: false, code: 'MAIL_NOT_SET' },
    webhook: { isReady: false, code: 'WEBHOOK_SECRET_MISSING' },
    file: ready,
  },
  rows: [],
  ...change,
})

describe('what keeps messages from going out', () => {
  it('says that mail is not set up, and is silent about webhooks that nobody uses', () => {
    expect(troublesOf(outbox(), false, en)).toEqual(['Mail is not set up: mail waits.'])
  })
  it('names the missing secret where text messages are set', () => {
    expect(troublesOf(outbox(), true, en)).toHaveLength(2)
  })
})

describe('what mail still needs before it is set', () => {
  const whole = {
    host: 'mail.example',
    port: 587,
    security: 'starttls',
    user: null,
    from: 'a@example.org',
    fromName: '',
  }
  const gap = (change: object) => mailGap({ ...whole, ...change } as Parameters<typeof mailGap>[0], en)
  it('names the topmost field that is missing or unusable, in words', () => {
    expect(gap({})).toBeNull()
    expect(gap({ host: ' ', from: '' })).toBe(en.needHost)
    expect(gap({ port: 0 })).toBe(en.needPort)
    expect(gap({ port: 65_536 })).toBe(en.needPort)
    for (const from of ['', 'desk', 'desk@', 'a b@example.org']) expect(gap({ from })).toBe(en.needFrom)
  })
})

describe('whom it would be', () => {
  const person = (name: string, why: Reminded['leftOut'][number]['why']) => ({ personId: name, name, why })
  const one = { personId: 'a', way: 'mail', to: 'a@example.org', language: 'en', gauges: ['A1'] } satisfies Omit<
    Reminded['remind'][number],
    'name'
  >
  it('names those to be reminded, and counts the others by their reason', () => {
    const reminded: Reminded = {
      day: '2026-05-31',
      isQueued: false,
      remind: [
        { ...one, name: 'Ada' },
        { ...one, name: 'Blas' },
      ],
      leftOut: [person('C', 'away'), person('D', 'read'), person('E', 'read')],
    }
    expect(whomText(reminded, en)).toBe('2 would be reminded now: Ada, Blas. Left out: 2 have read, 1 away.')
    expect(whomText({ ...reminded, remind: [], leftOut: [] }, en)).toBe('Nobody would be reminded now.')
  })
  it('says so where a recipient was erased', () => {
    expect(recipientOf({ recipient: '' }, en)).toBe('somebody who was erased')
  })
})
