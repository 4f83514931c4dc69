/** Keys of senders over SQL, for any database that Kysely speaks. */
import { type KeyScope, keyScopeSchema } from '@gaugewright/contract'
import { formatInstant, isoFromEpochDay } from '@gaugewright/science'
import type { SenderKey, Senders } from '../../ports/senders.ts'
import { instantMs } from '../instantMs.ts'
import { keyTaken, unknownKey } from '../unknown.ts'
import type { SenderKeyTable } from './machineTables.ts'
import { epochDay } from './rowShapes.ts'
import type { Store, WriteTransaction } from './writeTransaction.ts'

export class SqlSenders implements Senders {
  readonly #store: Store
  readonly #readable: (error: unknown) => unknown

  /** @param readable turns the database's own errors into LedgerErrors */
  constructor(store: Store, readable: (error: unknown) => unknown) {
    this.#store = store
    this.#readable = readable
  }

  async keys(): Promise<SenderKey[]> {
    const query = this.#store.db.selectFrom('sender_key').selectAll().orderBy('made_at_ms').orderBy('id')
    return (await query.execute()).map(keyFromRow)
  }

  async addKey(key: SenderKey): Promise<void> {
    await this.#write(async ({ db }) => {
      const query = db
        .selectFrom('sender_key')
        .select('id')
        .where((eb) => eb.or([eb('id', '=', key.id), eb('key_hash', '=', key.keyHash)]))
      if ((await query.executeTakeFirst()) !== undefined) throw keyTaken()
      await db
        .insertInto('sender_key')
        .values({
          id: key.id,
          sender: key.sender,
          scopes: key.scopes.join(' '),
          start: key.start,
          key_hash: key.keyHash,
          made_at_ms: instantMs(key.madeAtUtc),
          made_by: key.madeBy,
          revoked_at_ms: key.revokedAtUtc === null ? null : instantMs(key.revokedAtUtc),
          last_used_on: key.lastUsedOn === null ? null : epochDay(key.lastUsedOn),
        })
        .execute()
    })
  }

  async keyByHash(keyHash: string): Promise<SenderKey | null> {
    const row = await this.#store.db
      .selectFrom('sender_key')
      .selectAll()
      .where('key_hash', '=', keyHash)
      .executeTakeFirst()
    return row === undefined ? null : keyFromRow(row)
  }

  async revokeKey(id: string, revokedAtUtc: string): Promise<SenderKey> {
    await this.#write(async ({ db }) => {
      await db
        .updateTable('sender_key')
        .set({ revoked_at_ms: instantMs(revokedAtUtc) })
        .where('id', '=', id)
        .where('revoked_at_ms', 'is', null)
        .execute()
    })
    const row = await this.#store.db.selectFrom('sender_key').selectAll().where('id', '=', id).executeTakeFirst()
    if (row === undefined) throw unknownKey(id)
    return keyFromRow(row)
  }

  async usedOn(id: string, day: string): Promise<void> {
    await this.#write(async ({ db }) => {
      await db
        .updateTable('sender_key')
        .set({ last_used_on: epochDay(day) })
        .where('id', '=', id)
        .execute()
    })
  }

  async #write(work: (transaction: WriteTransaction) => Promise<void>): Promise<void> {
    const transaction = await this.#store.begin()
    try {
      await work(transaction)
      await transaction.commit()
    } catch (error) {
      await transaction.rollback()
      throw this.#readable(error)
    }
  }
}

function keyFromRow(row: SenderKeyTable): SenderKey {
  return {
    id: row.id,
    sender: row.sender,
    scopes: row.scopes.split(' ').map((scope): KeyScope => keyScopeSchema.parse(scope)),
    start: row.start,
    keyHash: row.key_hash,
    madeAtUtc: formatInstant(row.made_at_ms),
    madeBy: row.made_by,
    revokedAtUtc: row.revoked_at_ms === null ? null : formatInstant(row.revoked_at_ms),
    lastUsedOn: row.last_used_on === null ? null : isoFromEpochDay(row.last_used_on),
  }
}
