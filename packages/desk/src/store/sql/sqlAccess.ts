/** People and access over SQL, for any database that Kysely speaks. */
import type { Role } from '@gaugewright/contract'
import { formatInstant, isoFromEpochDay } from '@gaugewright/science'
import type { Access, AuditQuery, Session, SignInLink, StoredAuditEntry, StoredPerson } from '../../ports/access.ts'
import { instantMs } from '../instantMs.ts'
import { unknownPerson } from '../unknown.ts'
import type { PersonTable, SessionTable, SignInLinkTable } from './accessTables.ts'
import { auditRows, insertAudit } from './auditRows.ts'
import { forgetName } from './forgetName.ts'
import { epochDay } from './rowShapes.ts'
import type { Store, WriteTransaction } from './writeTransaction.ts'

export class SqlAccess implements Access {
  readonly #store: Store
  readonly #readable: (error: unknown) => unknown

  /** @param readable turns the database's own errors into LedgerErrors */
  constructor(store: Store, readable: (error: unknown) => unknown) {
    this.#store = store
    this.#readable = readable
  }

  async people(): Promise<StoredPerson[]> {
    const { db } = this.#store
    const rows = await db.selectFrom('person').selectAll().orderBy('name').orderBy('id').execute()
    const gauges = await db.selectFrom('person_gauge').selectAll().orderBy('gauge_id').execute()
    const ofPerson = new Map<string, string[]>(rows.map(({ id }) => [id, []]))
    for (const { person_id, gauge_id } of gauges) ofPerson.get(person_id)?.push(gauge_id)
    return rows.map((row) => personFromRow(row, ofPerson.get(row.id) ?? []))
  }

  async person(id: string): Promise<StoredPerson | null> {
    return await this.#one(
      await this.#store.db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirst(),
    )
  }

  async personByMail(mail: string): Promise<StoredPerson | null> {
    const query = this.#store.db.selectFrom('person').selectAll().where('mail', '=', mail)
    return await this.#one(await query.executeTakeFirst())
  }

  async savePerson({ id, name, role, mail, language, gauges, addedAtUtc }: StoredPerson): Promise<void> {
    await this.#write(async ({ db }) => {
      const row = { name, role, mail, language, added_at_ms: instantMs(addedAtUtc) }
      await db
        .insertInto('person')
        .values({ id, ...row, last_seen_on: null })
        .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
        .execute()
      await db.deleteFrom('person_gauge').where('person_id', '=', id).execute()
      const own = [...new Set(gauges)].map((gauge_id) => ({ person_id: id, gauge_id }))
      if (own.length > 0) await db.insertInto('person_gauge').values(own).execute()
    })
  }

  async hasAnyPassword(): Promise<boolean> {
    return (await this.#store.db.selectFrom('password').select('person_id').limit(1).execute()).length > 0
  }

  async withPassword(): Promise<Set<string>> {
    const rows = await this.#store.db.selectFrom('password').select('person_id').execute()
    return new Set(rows.map(({ person_id }) => person_id))
  }

  async passwordHash(personId: string): Promise<string | null> {
    const query = this.#store.db.selectFrom('password').select('hash').where('person_id', '=', personId)
    return (await query.executeTakeFirst())?.hash ?? null
  }

  async setPasswordHash(personId: string, hash: string): Promise<void> {
    await this.#write(async (transaction) => {
      await needPerson(transaction, personId)
      await transaction.db
        .insertInto('password')
        .values({ person_id: personId, hash })
        .onConflict((conflict) => conflict.column('person_id').doUpdateSet({ hash }))
        .execute()
      await transaction.db.deleteFrom('session').where('person_id', '=', personId).execute()
    })
  }

  async startSession({ tokenHash, personId, startedAtUtc, endsAtUtc }: Session): Promise<void> {
    await this.#write(async (transaction) => {
      await needPerson(transaction, personId)
      const instants = { started_at_ms: instantMs(startedAtUtc), ends_at_ms: instantMs(endsAtUtc) }
      const row = { token_hash: tokenHash, person_id: personId, ...instants }
      await transaction.db.insertInto('session').values(row).execute()
    })
  }

  async session(tokenHash: string, nowUtc: string): Promise<Session | null> {
    const query = this.#store.db.selectFrom('session').selectAll().where('token_hash', '=', tokenHash)
    const row = await query.where('ends_at_ms', '>', instantMs(nowUtc)).executeTakeFirst()
    return row === undefined ? null : sessionFromRow(row)
  }

  async sessionsOf(personId: string, nowUtc: string): Promise<Session[]> {
    const query = this.#store.db.selectFrom('session').selectAll().where('person_id', '=', personId)
    const current = query.where('ends_at_ms', '>', instantMs(nowUtc)).orderBy('started_at_ms', 'desc')
    return (await current.orderBy('token_hash').execute()).map(sessionFromRow)
  }

  async endSession(tokenHash: string): Promise<void> {
    await this.#write(({ db }) => db.deleteFrom('session').where('token_hash', '=', tokenHash).execute())
  }

  async endSessionsOf(personId: string): Promise<void> {
    await this.#write(({ db }) => db.deleteFrom('session').where('person_id', '=', personId).execute())
  }

  async saveLink({ tokenHash, browserHash, personId, askedAtUtc, endsAtUtc }: SignInLink): Promise<void> {
    await this.#write(async (transaction) => {
      await needPerson(transaction, personId)
      const instants = { asked_at_ms: instantMs(askedAtUtc), ends_at_ms: instantMs(endsAtUtc) }
      const row = { token_hash: tokenHash, browser_hash: browserHash, person_id: personId, ...instants }
      await transaction.db.insertInto('sign_in_link').values(row).execute()
    })
  }

  async takeLink(tokenHash: string, browserHash: string, nowUtc: string): Promise<string | null> {
    return await this.#write(async ({ db }) => {
      const taken = await db
        .deleteFrom('sign_in_link')
        .where('token_hash', '=', tokenHash)
        .where('browser_hash', '=', browserHash)
        .where('ends_at_ms', '>', instantMs(nowUtc))
        .returning('person_id')
        .executeTakeFirst()
      return taken?.person_id ?? null
    })
  }

  async linksOf(personId: string): Promise<SignInLink[]> {
    const query = this.#store.db.selectFrom('sign_in_link').selectAll().where('person_id', '=', personId)
    return (await query.orderBy('asked_at_ms').orderBy('token_hash').execute()).map(linkFromRow)
  }

  async endLinksOf(personId: string): Promise<void> {
    await this.#write(({ db }) => db.deleteFrom('sign_in_link').where('person_id', '=', personId).execute())
  }

  async appendAudit(entry: StoredAuditEntry): Promise<void> {
    await this.#write(({ db }) => insertAudit(db, entry))
  }

  async audit(query: AuditQuery): Promise<StoredAuditEntry[]> {
    return await auditRows(this.#store.db, query)
  }

  async lastSeen(): Promise<Map<string, string>> {
    const rows = await this.#store.db.selectFrom('person').select(['id', 'last_seen_on']).execute()
    const seen = rows.filter(({ last_seen_on }) => last_seen_on !== null)
    return new Map(seen.map((row) => [row.id, isoFromEpochDay(row.last_seen_on ?? 0)]))
  }

  async sawOn(personId: string, day: string): Promise<void> {
    const last_seen_on = epochDay(day)
    await this.#write(({ db }) => db.updateTable('person').set({ last_seen_on }).where('id', '=', personId).execute())
  }

  async forget(personId: string): Promise<void> {
    await this.#write(async (transaction) => {
      const { name } = await needPerson(transaction, personId)
      await forgetName(transaction.db, name)
      await transaction.db.deleteFrom('person').where('id', '=', personId).execute()
    })
  }

  async sweep(nowUtc: string): Promise<void> {
    const now = instantMs(nowUtc)
    await this.#write(async ({ db }) => {
      await db.deleteFrom('session').where('ends_at_ms', '<=', now).execute()
      await db.deleteFrom('sign_in_link').where('ends_at_ms', '<=', now).execute()
    })
  }

  async #one(row: PersonTable | undefined): Promise<StoredPerson | null> {
    if (row === undefined) return null
    const query = this.#store.db.selectFrom('person_gauge').select('gauge_id').where('person_id', '=', row.id)
    const gauges = await query.orderBy('gauge_id').execute()
    return personFromRow(
      row,
      gauges.map(({ gauge_id }) => gauge_id),
    )
  }

  async #write<T>(work: (transaction: WriteTransaction) => Promise<T>): Promise<T> {
    const transaction = await this.#store.begin('together')
    try {
      const result = await work(transaction)
      await transaction.commit()
      return result
    } catch (error) {
      await transaction.rollback()
      throw this.#readable(error)
    }
  }
}

async function needPerson({ db }: WriteTransaction, personId: string): Promise<{ name: string }> {
  const known = await db.selectFrom('person').select('name').where('id', '=', personId).executeTakeFirst()
  if (known === undefined) throw unknownPerson(personId)
  return known
}

function personFromRow(row: PersonTable, gauges: readonly string[]): StoredPerson {
  return {
    id: row.id,
    name: row.name,
    role: row.role as Role,
    mail: row.mail,
    language: row.language as 'en' | 'es',
    gauges,
    addedAtUtc: formatInstant(row.added_at_ms),
  }
}

function sessionFromRow(row: SessionTable): Session {
  return {
    tokenHash: row.token_hash,
    personId: row.person_id,
    startedAtUtc: formatInstant(row.started_at_ms),
    endsAtUtc: formatInstant(row.ends_at_ms),
  }
}

function linkFromRow(row: SignInLinkTable): SignInLink {
  return {
    tokenHash: row.token_hash,
    browserHash: row.browser_hash,
    personId: row.person_id,
    askedAtUtc: formatInstant(row.asked_at_ms),
    endsAtUtc: formatInstant(row.ends_at_ms),
  }
}
