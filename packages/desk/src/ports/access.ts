/**
 * People, their sessions, their sign-in links, and the trail of what was done. Secrets are never kept, only their digests:
 * `tokenHash` and `browserHash` are SHA-256 of 256 random bits, in hexadecimal; a password is an Argon2id string.
 */
import type { Role } from '@gaugewright/contract'

export interface StoredPerson {
  id: string
  name: string
  role: Role
  /** Lower case, one person each; null where the person cannot be written to. */
  mail: string | null
  language: 'en' | 'es'
  /** Ids of the gauges that the person reads. */
  gauges: readonly string[]
  addedAtUtc: string
}

export interface Session {
  tokenHash: string
  personId: string
  startedAtUtc: string
  endsAtUtc: string
}

export interface SignInLink {
  tokenHash: string
  /** Of the cookie that the browser got which asked for the link. */
  browserHash: string
  personId: string
  askedAtUtc: string
  endsAtUtc: string
}

/** One thing that was done. Holds no names: a person is their id, and so is what it was done to. */
export interface StoredAuditEntry {
  /** Sorts by time. */
  id: string
  atUtc: string
  personId: string | null
  door: 'desk' | 'command line' | 'rule'
  act: string
  subject: string | null
  result: 'done' | 'refused'
}

export interface AuditQuery {
  /** Only entries older than this one. */
  beforeId?: string | undefined
  /** Done by, or to, this person. */
  personId?: string | undefined
  limit: number
}

/** Every method rejects with a LedgerError, and then nothing has changed. What resolved is durable. */
export interface Access {
  /** By name. */
  people(): Promise<StoredPerson[]>
  person(id: string): Promise<StoredPerson | null>
  personByMail(mail: string): Promise<StoredPerson | null>
  /** Insert or update by id. MAIL_TAKEN where another person has the address. */
  savePerson(person: StoredPerson): Promise<void>
  /** Whether anybody holds a password: until then the desk opens without one, on this computer alone. */
  hasAnyPassword(): Promise<boolean>
  /** Ids of those who hold a password. */
  withPassword(): Promise<Set<string>>
  passwordHash(personId: string): Promise<string | null>
  /** Ends every session of the person. PERSON_UNKNOWN */
  setPasswordHash(personId: string, hash: string): Promise<void>
  /** PERSON_UNKNOWN */
  startSession(session: Session): Promise<void>
  /** Null where there is none, or it has ended. */
  session(tokenHash: string, nowUtc: string): Promise<Session | null>
  /** Sessions of the person that have not ended, newest first. */
  sessionsOf(personId: string, nowUtc: string): Promise<Session[]>
  endSession(tokenHash: string): Promise<void>
  endSessionsOf(personId: string): Promise<void>
  /** The one link of this person: an earlier one no longer works. PERSON_UNKNOWN */
  saveLink(link: SignInLink): Promise<void>
  /** Uses a link up, once, whoever asks at the same time: the person, or null where it is used, late or another browser's. */
  takeLink(tokenHash: string, browserHash: string, nowUtc: string): Promise<string | null>
  linksOf(personId: string): Promise<SignInLink[]>
  endLinksOf(personId: string): Promise<void>
  appendAudit(entry: StoredAuditEntry): Promise<void>
  /** Newest first. */
  audit(query: AuditQuery): Promise<StoredAuditEntry[]>
  /** The days on which people were last seen, by id; kept to the day. */
  lastSeen(): Promise<Map<string, string>>
  sawOn(personId: string, day: string): Promise<void>
  /**
   * Drops the person: name, address, password, sessions and links, in one step; and their name wherever the same store
   * keeps it beside something done (absences, photos, settings, messages). The trail stays, without them. PERSON_UNKNOWN
   */
  forget(personId: string): Promise<void>
  /** Ended sessions and links, and entries of the trail before an instant: nothing is kept longer than is needed. */
  sweep(nowUtc: string): Promise<void>
}
