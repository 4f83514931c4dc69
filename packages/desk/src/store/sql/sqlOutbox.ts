/** The outbox over SQL, for any database that Kysely speaks. */
import type { Kysely } from 'kysely'
import { LedgerError } from '../../ports/ledgerError.ts'
import type { Outbox, OutgoingEvent, OutgoingKind, OutgoingState } from '../../ports/outbox.ts'
import { instantMs } from '../instantMs.ts'
import { outboxOver } from '../outbox/outboxOver.ts'
import type { OutboxReading, OutboxRows, OutboxWriting } from '../outbox/outboxRows.ts'
import type { OutgoingRecord } from '../outbox/outgoingRecord.ts'
import { unknownNetwork } from '../unknown.ts'
import { eventFromRow, outgoingFromRow, rowFromOutgoing } from './outgoingRows.ts'
import type { OutgoingTable } from './outgoingTables.ts'
import type { Tables } from './tables.ts'
import type { Store } from './writeTransaction.ts'

/** Keys asked for in one statement. */
const KEYS_AT_ONCE = 500

/** @param readable turns the database's own errors into LedgerErrors */
export function sqlOutbox(store: Store, readable: (error: unknown) => unknown): Outbox {
  const rows: OutboxRows = {
    read: new SqlOutboxReading(store.db),
    async write(work) {
      const transaction = await store.begin()
      try {
        const result = await work(new SqlOutboxWriting(transaction.db))
        await transaction.commit()
        return result
      } catch (error) {
        await transaction.rollback()
        throw readable(error)
      }
    },
  }
  return outboxOver(rows)
}

class SqlOutboxReading implements OutboxReading {
  protected readonly db: Kysely<Tables>

  constructor(db: Kysely<Tables>) {
    this.db = db
  }

  async byId(networkId: string, id: string): Promise<OutgoingRecord | null> {
    const found = await this.#of(networkId).where('outgoing.id', '=', id).executeTakeFirst()
    return found === undefined ? null : outgoingFromRow(found, networkId)
  }

  async byToken(token: string): Promise<OutgoingRecord | null> {
    const found = await this.db
      .selectFrom('outgoing')
      .innerJoin('network', 'network.network_key', 'outgoing.network_key')
      .selectAll('outgoing')
      .select('network.id as network_id')
      .where('token', '=', token)
      .executeTakeFirst()
    return found === undefined ? null : outgoingFromRow(found, found.network_id)
  }

  async knownKeys(networkId: string, keys: readonly string[]): Promise<Set<string>> {
    const known = new Set<string>()
    for (let from = 0; from < keys.length; from += KEYS_AT_ONCE) {
      const some = keys.slice(from, from + KEYS_AT_ONCE)
      const found = await this.#of(networkId).where('message_key', 'in', some).execute()
      for (const row of found) known.add(row.message_key)
    }
    return known
  }

  async open(networkId: string, kinds: readonly OutgoingKind[], nowUtc: string): Promise<OutgoingRecord[]> {
    if (kinds.length === 0) return []
    const nowMs = instantMs(nowUtc)
    const query = this.#of(networkId)
      .where('kind', 'in', kinds)
      .where((eb) =>
        eb.or([
          eb('state', '=', 'sending').and('lease_until_ms', '<=', nowMs),
          eb('state', '=', 'waiting').and(eb.or([eb('not_before_ms', '<=', nowMs), eb('not_after_ms', '<', nowMs)])),
        ]),
      )
    return this.#records(await query.orderBy('sequence').execute(), networkId)
  }

  async toRecipient(networkId: string, recipient: string): Promise<OutgoingRecord[]> {
    const query = this.#of(networkId).where('kind', '=', 'mail').where('recipient', '=', recipient)
    return this.#records(await query.orderBy('sequence').execute(), networkId)
  }

  async list(networkId: string, states: readonly OutgoingState[], limit: number): Promise<OutgoingRecord[]> {
    if (states.length === 0) return []
    const query = this.#of(networkId).where('state', 'in', states).orderBy('sequence', 'desc').limit(limit)
    return this.#records(await query.execute(), networkId)
  }

  async counts(networkId: string): Promise<Map<OutgoingState, number>> {
    const found = await this.db
      .selectFrom('outgoing')
      .innerJoin('network', 'network.network_key', 'outgoing.network_key')
      .where('network.id', '=', networkId)
      .select((eb) => ['state', eb.fn.countAll<number>().as('count')])
      .groupBy('state')
      .execute()
    return new Map(found.map((row) => [row.state as OutgoingState, Number(row.count)]))
  }

  async events(networkId: string, id: string): Promise<OutgoingEvent[]> {
    const found = await this.db
      .selectFrom('outgoing_event')
      .innerJoin('network', 'network.network_key', 'outgoing_event.network_key')
      .selectAll('outgoing_event')
      .where('network.id', '=', networkId)
      .where('message_id', '=', id)
      .orderBy('sequence')
      .execute()
    return found.map(eventFromRow)
  }

  #of(networkId: string) {
    return this.db
      .selectFrom('outgoing')
      .innerJoin('network', 'network.network_key', 'outgoing.network_key')
      .selectAll('outgoing')
      .where('network.id', '=', networkId)
  }

  #records(rows: readonly OutgoingTable[], networkId: string): OutgoingRecord[] {
    return rows.map((row) => outgoingFromRow(row, networkId))
  }
}

class SqlOutboxWriting extends SqlOutboxReading implements OutboxWriting {
  async insert(record: OutgoingRecord): Promise<void> {
    if ((await this.byId(record.networkId, record.id)) !== null) {
      throw new LedgerError('ID_TAKEN', 'The message has an id that another message has.', 'Give each a fresh id.')
    }
    const networkKey = await this.#networkKey(record.networkId)
    const sequence = await this.#nextSequence('outgoing', networkKey)
    await this.db
      .insertInto('outgoing')
      .values({ network_key: networkKey, sequence, ...rowFromOutgoing(record) })
      .execute()
  }

  async update(record: OutgoingRecord): Promise<void> {
    const networkKey = await this.#networkKey(record.networkId)
    await this.db
      .updateTable('outgoing')
      .set(rowFromOutgoing(record))
      .where('network_key', '=', networkKey)
      .where('id', '=', record.id)
      .execute()
  }

  async addEvent(networkId: string, event: OutgoingEvent): Promise<void> {
    const networkKey = await this.#networkKey(networkId)
    await this.db
      .insertInto('outgoing_event')
      .values({
        network_key: networkKey,
        sequence: await this.#nextSequence('outgoing_event', networkKey),
        message_id: event.messageId,
        what: event.what,
        by_name: event.by,
        at_ms: instantMs(event.atUtc),
        detail: event.detail,
      })
      .execute()
  }

  async #networkKey(networkId: string): Promise<number> {
    const query = this.db.selectFrom('network').select('network_key').where('id', '=', networkId)
    const found = await query.executeTakeFirst()
    if (found === undefined) throw unknownNetwork(networkId)
    return found.network_key
  }

  async #nextSequence(table: 'outgoing' | 'outgoing_event', networkKey: number): Promise<number> {
    const last = await this.db
      .selectFrom(table)
      .select((eb) => eb.fn.max('sequence').as('sequence'))
      .where('network_key', '=', networkKey)
      .executeTakeFirst()
    return Number(last?.sequence ?? 0) + 1
  }
}
