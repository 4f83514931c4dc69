/** The commands of mail, outbox and reminders, on a ledger in a file. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openSqlitePorts } from '../src/store/sqlite/openSqlitePorts.ts'
import { fillLedger } from './support/openDesk.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

let world: TestWorld
let db: string[]

beforeAll(async () => {
  world = await testWorld()
  const path = world.path('ledger.db')
  db = ['--db', path]
  const { ledger, access } = await openSqlitePorts(path)
  await fillLedger(ledger, smallNetwork(4))
  const person = { role: 'observer', addedAtUtc: '2026-01-01T00:00:00Z' } as const
  await access.savePerson({
    ...person,
    id: 'ada',
    name: 'Ada',
    language: 'en',
    mail: 'ada@example.org',
    gauges: ['gF6'],
  })
  await access.savePerson({ ...person, id: 'blas', name: 'Blas', language: 'es', mail: null, gauges: ['gF5'] })
  await ledger.close()
})
afterAll(() => world.remove())

const ran = async (...words: string[]) => await world.gaugewright(...words, ...db)
const json = async (...words: string[]) => JSON.parse((await ran(...words, '--json')).out)

describe('gaugewright mail, remind, outbox', () => {
  it('says that mail is not set up, and queues no test', async () => {
    expect((await ran('outbox')).out).toContain('Nothing was ever queued.\nMail is not set up')
    const test = await ran('mail', 'test', 'ada@example.org')
    expect([test.code, test.err]).toEqual([1, expect.stringMatching(/^MAIL_NOT_SET {2}/)])
  })

  it('keeps mail settings, and takes no unprotected mail to another computer', async () => {
    const bad = await ran('mail', 'set', 'mail.example.org', '--from', 'desk@example.org', '--security', 'none')
    expect([bad.code, bad.err]).toEqual([1, expect.stringMatching(/^MAIL_UNPROTECTED/)])
    expect((await ran('mail', 'set', 'h', '--from', 'nobody')).code).toBe(2)
    const set = await ran('mail', 'set', 'mail.example.org', '--from', 'desk@example.org', '--by', 'Q')
    expect(set.out).toMatch(
      /from desk@example\.org by mail\.example\.org:587 \(starttls\), without a password; set by Q/,
    )
  })

  it('tells whom it would remind, refuses while reminders are off, and then queues each note once', async () => {
    const look = await ran('remind', '--dry-run')
    expect(look.out).toMatch(/^2026-05-31: 1 person would be reminded\.\n/)
    expect(look.out).toMatch(/Ada +mail +ada@example\.org +F6/)
    expect(look.out).toContain('Left out: 1 read.')
    expect((await ran('remind')).err).toMatch(/^REMINDERS_OFF/)
    expect((await ran('remind', 'set', '10:00')).err).toMatch(/^REMINDERS_NEED_ADDRESS/)
    expect((await ran('remind', 'set', '06:30', '--desk-url', 'https://desk.example.org')).err).toMatch(
      /^REMINDERS_TOO_EARLY/,
    )
    expect((await ran('remind', 'set', '25:00', '--desk-url', 'https://desk.example.org')).code).toBe(2)
    expect((await ran('remind', 'set', '08:00', '--desk-url', 'https://desk.example.org')).out).toContain(
      'at 08:00 local',
    )
    expect(await json('remind')).toMatchObject({ isQueued: true, remind: [{ name: 'Ada', gauges: ['F6'] }] })
    expect(await json('remind')).toMatchObject({ remind: [], leftOut: [{ why: 'reminded already' }, { why: 'read' }] })
  })

  it('lists what waits, discards it and takes that back; what was done stays', async () => {
    const { rows, counts } = await json('outbox')
    expect(counts.waiting).toBe(1)
    expect(rows[0]).toMatchObject({ purpose: 'reminder', recipient: 'ada@example.org', may: ['discard'] })
    expect((await ran('outbox', 'discard', rows[0].id)).out).toContain('reminder to ada@example.org, discarded.')
    expect((await json('outbox', 'list', '--state', 'discarded')).rows[0].may).toEqual(['retry', 'restore'])
    expect((await ran('outbox', 'restore', rows[0].id)).out).toContain('waiting')
    expect((await ran('outbox', 'retry', rows[0].id)).err).toMatch(/^OUTGOING_STATE/)
    expect((await ran('outbox', 'retry', 'none')).err).toMatch(/^OUTGOING_UNKNOWN/)
    expect((await ran('outbox', 'list', '--state', 'lost')).code).toBe(2)
  })

  it('writes down what a person chose', async () => {
    expect((await ran('remind', 'choose', 'Ada', 'text')).err).toMatch(/^PHONE_MISSING/)
    expect((await ran('remind', 'choose', 'Ada', 'text', '--phone', '0600')).code).toBe(2)
    expect((await ran('remind', 'choose', 'Ada', 'stop')).out).toBe('Ada gets no reminders.\n')
    expect((await ran('remind', 'choose', 'Nobody', 'stop')).err).toMatch(/^PERSON_UNKNOWN/)
  })
})
