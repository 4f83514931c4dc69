/** What every store of people and access promises. Each adapter runs the same suite. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Access, Session, SignInLink, StoredAuditEntry, StoredPerson } from '../ports/access.ts'

const NOW = '2026-05-31T08:00:00Z'
const LATER = '2026-05-31T08:15:00Z'

function person(id: string, changes: Partial<StoredPerson> = {}): StoredPerson {
  return {
    id,
    name: `Person ${id}`,
    role: 'observer',
    mail: `${id}@people.example`,
    language: 'en',
    gauges: [],
    addedAtUtc: '2026-05-01T08:00:00Z',
    ...changes,
  }
}

function session(tokenHash: string, personId: string, changes: Partial<Session> = {}): Session {
  return { tokenHash, personId, startedAtUtc: NOW, endsAtUtc: LATER, ...changes }
}

function link(tokenHash: string, personId: string, changes: Partial<SignInLink> = {}): SignInLink {
  return { tokenHash, browserHash: 'browser', personId, askedAtUtc: NOW, endsAtUtc: LATER, ...changes }
}

function entry(id: string, changes: Partial<StoredAuditEntry> = {}): StoredAuditEntry {
  return { id, atUtc: NOW, personId: 'p1', door: 'desk', act: 'decide', subject: null, result: 'done', ...changes }
}

export function accessPromises(
  store: string,
  open: () => Promise<{ access: Access; dispose: () => Promise<void> }>,
): void {
  describe(`access in ${store}`, () => {
    let access: Access
    let dispose: () => Promise<void>
    beforeEach(async () => {
      ;({ access, dispose } = await open())
      await access.savePerson(person('p2', { name: 'B', role: 'colleague', gauges: ['g2', 'g1'], language: 'es' }))
      await access.savePerson(person('p1', { name: 'A', mail: null }))
    })
    afterEach(() => dispose())

    it('gives people back as they were saved, by name, and changes them by id', async () => {
      expect(await access.people()).toEqual([
        person('p1', { name: 'A', mail: null }),
        person('p2', { name: 'B', role: 'colleague', gauges: ['g1', 'g2'], language: 'es' }),
      ])
      await access.savePerson(person('p2', { name: 'B', gauges: ['g3'] }))
      expect(await access.person('p2')).toEqual(person('p2', { name: 'B', gauges: ['g3'] }))
      expect((await access.personByMail('p2@people.example'))?.id).toBe('p2')
      expect([await access.person('p9'), await access.personByMail('p9@people.example')]).toEqual([null, null])
    })

    it('lets each address be of one person, while many may have none', async () => {
      await expect(access.savePerson(person('p3', { mail: 'p2@people.example' }))).rejects.toMatchObject({
        problem: { code: 'MAIL_TAKEN' },
      })
      await access.savePerson(person('p3', { mail: null }))
      expect(await access.people()).toHaveLength(3)
    })

    it('knows who has a password, and ends their sessions when it changes', async () => {
      expect(await access.hasAnyPassword()).toBe(false)
      await access.setPasswordHash('p1', '$argon2id$one')
      await access.startSession(session('s1', 'p1'))
      await access.startSession(session('s2', 'p2'))
      await access.setPasswordHash('p1', '$argon2id$two')
      expect([await access.hasAnyPassword(), await access.passwordHash('p1')]).toEqual([true, '$argon2id$two'])
      expect(await access.passwordHash('p2')).toBeNull()
      expect(await access.withPassword()).toEqual(new Set(['p1']))
      expect([await access.session('s1', NOW), (await access.session('s2', NOW))?.personId]).toEqual([null, 'p2'])
    })

    it('gives a session until its end, and not after it was ended', async () => {
      await access.startSession(session('s1', 'p1'))
      await access.startSession(session('s2', 'p1', { startedAtUtc: '2026-05-31T08:01:00Z' }))
      expect(await access.session('s1', '2026-05-31T08:14:59Z')).toEqual(session('s1', 'p1'))
      expect(await access.session('s1', LATER)).toBeNull()
      expect((await access.sessionsOf('p1', NOW)).map(({ tokenHash }) => tokenHash)).toEqual(['s2', 's1'])
      await access.endSession('s1')
      expect(await access.session('s1', NOW)).toBeNull()
      await access.endSessionsOf('p1')
      expect(await access.sessionsOf('p1', NOW)).toEqual([])
    })

    it('uses a link up once, however many ask at the same time', async () => {
      await access.saveLink(link('l1', 'p1'))
      const taken = await Promise.all([1, 2, 3, 4].map(() => access.takeLink('l1', 'browser', NOW)))
      expect(taken.filter((id) => id === 'p1')).toHaveLength(1)
      expect(taken.filter((id) => id === null)).toHaveLength(3)
    })

    it('gives a link to no other browser and not when it is late, and leaves it for the right one', async () => {
      await access.saveLink(link('l1', 'p1'))
      expect(await access.takeLink('l1', 'another', NOW)).toBeNull()
      expect(await access.takeLink('l1', 'browser', LATER)).toBeNull()
      expect(await access.linksOf('p1')).toEqual([link('l1', 'p1')])
      expect(await access.takeLink('l1', 'browser', NOW)).toBe('p1')
    })

    it('links of one person end together, and nobody else’s', async () => {
      for (const id of ['p1', 'p2']) await access.savePerson(person(id))
      for (const [secret, id] of [
        ['l1', 'p1'],
        ['l2', 'p1'],
        ['l3', 'p2'],
      ] as const)
        await access.saveLink(link(secret, id))
      await access.endLinksOf('p1')
      expect(await access.linksOf('p1')).toEqual([])
      expect(await access.takeLink('l2', 'browser', NOW)).toBeNull()
      expect(await access.takeLink('l3', 'browser', NOW)).toBe('p2')
    })

    it('refuses what belongs to nobody', async () => {
      const unknown = { problem: { code: 'PERSON_UNKNOWN' } }
      await expect(access.setPasswordHash('p9', 'x')).rejects.toMatchObject(unknown)
      await expect(access.startSession(session('s', 'p9'))).rejects.toMatchObject(unknown)
      await expect(access.saveLink(link('l', 'p9'))).rejects.toMatchObject(unknown)
      await expect(access.forget('p9')).rejects.toMatchObject(unknown)
    })

    it('keeps the trail newest first, by who did it and to whom it was done', async () => {
      await access.appendAudit(entry('a1'))
      await access.appendAudit(entry('a2', { personId: null, act: 'signIn', result: 'refused', door: 'command line' }))
      await access.appendAudit(entry('a3', { personId: 'p2', act: 'setRole', subject: 'p1' }))
      const ids = async (query: Parameters<Access['audit']>[0]) => (await access.audit(query)).map(({ id }) => id)
      expect(await ids({ limit: 10 })).toEqual(['a3', 'a2', 'a1'])
      expect(await ids({ limit: 1 })).toEqual(['a3'])
      expect(await ids({ limit: 10, beforeId: 'a3' })).toEqual(['a2', 'a1'])
      expect(await ids({ limit: 10, personId: 'p1' })).toEqual(['a3', 'a1'])
      await expect(access.appendAudit(entry('a1'))).rejects.toMatchObject({ problem: { code: 'ID_TAKEN' } })
    })

    it('forgets a person with all that is theirs, and keeps the trail', async () => {
      await access.appendAudit(entry('a1', { personId: 'p2' }))
      await access.setPasswordHash('p2', '$argon2id$x')
      await access.startSession(session('s1', 'p2'))
      await access.saveLink(link('l1', 'p2'))
      await access.sawOn('p2', '2026-05-30')
      await access.forget('p2')
      expect((await access.people()).map(({ id }) => id)).toEqual(['p1'])
      expect([await access.hasAnyPassword(), await access.session('s1', NOW)]).toEqual([false, null])
      expect(await access.takeLink('l1', 'browser', NOW)).toBeNull()
      expect(await access.lastSeen()).toEqual(new Map())
      expect(await access.audit({ limit: 10 })).toEqual([entry('a1', { personId: 'p2' })])
    })

    it('sweeps away what has ended, and nothing else', async () => {
      await access.startSession(session('old', 'p1', { endsAtUtc: NOW }))
      await access.startSession(session('new', 'p1'))
      await access.saveLink(link('old', 'p1', { endsAtUtc: NOW }))
      await access.saveLink(link('new', 'p1'))
      await access.sweep(NOW)
      expect((await access.sessionsOf('p1', '2026-05-01T00:00:00Z')).map(({ tokenHash }) => tokenHash)).toEqual(['new'])
      expect((await access.linksOf('p1')).map(({ tokenHash }) => tokenHash)).toEqual(['new'])
    })

    it('knows the day on which somebody was last seen', async () => {
      await access.sawOn('p1', '2026-05-30')
      await access.sawOn('p1', '2026-05-31')
      await access.sawOn('p9', '2026-05-31')
      expect(await access.lastSeen()).toEqual(new Map([['p1', '2026-05-31']]))
    })
  })
}
