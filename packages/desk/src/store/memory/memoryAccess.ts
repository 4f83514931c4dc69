/** People and access in memory, for tests and trials. Keeps every promise but that of outliving the process. */
import { formatInstant } from '@gaugewright/science'
import type { Access, AuditQuery, Session, SignInLink, StoredAuditEntry, StoredPerson } from '../../ports/access.ts'
import { LedgerError } from '../../ports/ledgerError.ts'
import { instantMs } from '../instantMs.ts'
import { mailTaken, unknownPerson } from '../unknown.ts'

export class MemoryAccess implements Access {
  readonly #people = new Map<string, StoredPerson>()
  readonly #passwords = new Map<string, string>()
  readonly #sessions = new Map<string, Session>()
  readonly #links = new Map<string, SignInLink>()
  readonly #trail: StoredAuditEntry[] = []
  readonly #seen = new Map<string, string>()

  async people(): Promise<StoredPerson[]> {
    const order = ({ name, id }: StoredPerson): string => `${name}\n${id}`
    return structuredClone([...this.#people.values()].sort((one, other) => (order(one) < order(other) ? -1 : 1)))
  }

  async person(id: string): Promise<StoredPerson | null> {
    return structuredClone(this.#people.get(id) ?? null)
  }

  async personByMail(mail: string): Promise<StoredPerson | null> {
    return structuredClone([...this.#people.values()].find((person) => person.mail === mail) ?? null)
  }

  async savePerson(person: StoredPerson): Promise<void> {
    const taken = [...this.#people.values()].some(
      ({ id, mail }) => mail !== null && mail === person.mail && id !== person.id,
    )
    if (taken) throw mailTaken()
    const gauges = [...new Set(person.gauges)].sort()
    const addedAtUtc = formatInstant(instantMs(person.addedAtUtc))
    this.#people.set(person.id, { ...structuredClone(person), gauges, addedAtUtc })
  }

  async hasAnyPassword(): Promise<boolean> {
    return this.#passwords.size > 0
  }

  async withPassword(): Promise<Set<string>> {
    return new Set(this.#passwords.keys())
  }

  async passwordHash(personId: string): Promise<string | null> {
    return this.#passwords.get(personId) ?? null
  }

  async setPasswordHash(personId: string, hash: string): Promise<void> {
    this.#need(personId)
    this.#passwords.set(personId, hash)
    await this.endSessionsOf(personId)
  }

  async startSession(session: Session): Promise<void> {
    this.#need(session.personId)
    this.#sessions.set(session.tokenHash, structuredClone(session))
  }

  async session(tokenHash: string, nowUtc: string): Promise<Session | null> {
    const session = this.#sessions.get(tokenHash)
    return session !== undefined && isLater(session.endsAtUtc, nowUtc) ? structuredClone(session) : null
  }

  async sessionsOf(personId: string, nowUtc: string): Promise<Session[]> {
    const own = [...this.#sessions.values()].filter(
      (session) => session.personId === personId && isLater(session.endsAtUtc, nowUtc),
    )
    return structuredClone(own.sort((one, other) => instantMs(other.startedAtUtc) - instantMs(one.startedAtUtc)))
  }

  async endSession(tokenHash: string): Promise<void> {
    this.#sessions.delete(tokenHash)
  }

  async endSessionsOf(personId: string): Promise<void> {
    drop(this.#sessions, (session) => session.personId === personId)
  }

  async saveLink(link: SignInLink): Promise<void> {
    this.#need(link.personId)
    this.#links.set(link.tokenHash, structuredClone(link))
  }

  async takeLink(tokenHash: string, browserHash: string, nowUtc: string): Promise<string | null> {
    const link = this.#links.get(tokenHash)
    if (link === undefined || link.browserHash !== browserHash || !isLater(link.endsAtUtc, nowUtc)) return null
    this.#links.delete(tokenHash)
    return link.personId
  }

  async linksOf(personId: string): Promise<SignInLink[]> {
    return structuredClone([...this.#links.values()].filter((link) => link.personId === personId))
  }

  async endLinksOf(personId: string): Promise<void> {
    drop(this.#links, (link) => link.personId === personId)
  }

  async appendAudit(entry: StoredAuditEntry): Promise<void> {
    if (this.#trail.some(({ id }) => id === entry.id)) {
      throw new LedgerError('ID_TAKEN', 'The entry has an id that another entry has.', 'Give each a fresh id.')
    }
    this.#trail.push({ ...structuredClone(entry), atUtc: formatInstant(instantMs(entry.atUtc)) })
  }

  async audit({ beforeId, personId, limit }: AuditQuery): Promise<StoredAuditEntry[]> {
    const asked = this.#trail.filter(
      (entry) =>
        (beforeId === undefined || entry.id < beforeId) &&
        (personId === undefined || entry.personId === personId || entry.subject === personId),
    )
    return structuredClone(asked.sort((one, other) => (one.id < other.id ? 1 : -1)).slice(0, limit))
  }

  async lastSeen(): Promise<Map<string, string>> {
    return new Map(this.#seen)
  }

  async sawOn(personId: string, day: string): Promise<void> {
    if (this.#people.has(personId)) this.#seen.set(personId, day)
  }

  async forget(personId: string): Promise<void> {
    this.#need(personId)
    this.#people.delete(personId)
    this.#passwords.delete(personId)
    this.#seen.delete(personId)
    drop(this.#sessions, (session) => session.personId === personId)
    drop(this.#links, (link) => link.personId === personId)
  }

  async sweep(nowUtc: string): Promise<void> {
    drop(this.#sessions, ({ endsAtUtc }) => !isLater(endsAtUtc, nowUtc))
    drop(this.#links, ({ endsAtUtc }) => !isLater(endsAtUtc, nowUtc))
  }

  #need(personId: string): void {
    if (!this.#people.has(personId)) throw unknownPerson(personId)
  }
}

export function openMemoryAccess(): Access {
  return new MemoryAccess()
}

function isLater(instant: string, nowUtc: string): boolean {
  return instantMs(instant) > instantMs(nowUtc)
}

function drop<T>(kept: Map<string, T>, isOver: (value: T) => boolean): void {
  for (const [key, value] of kept) if (isOver(value)) kept.delete(key)
}
