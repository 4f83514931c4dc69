/** What is written down about people and sites, over SQL, for any database that Kysely speaks. */
import type { Journal, JournalEntry } from '../../ports/journal.ts'
import { instantMs } from '../instantMs.ts'
import { JournalListeners } from '../journalListeners.ts'
import { evenInstant } from '../outbox/evenInstant.ts'
import { unknownNetwork } from '../unknown.ts'
import { GaugeIds } from './gaugeIds.ts'
import type { JournalTable } from './journalTable.ts'
import type { Store, WriteTransaction } from './writeTransaction.ts'

/** @param readable turns the database's own errors into LedgerErrors */
export function sqlJournal(store: Store, readable: (error: unknown) => unknown): Journal {
  const ids = new GaugeIds(store.db)
  const listeners = new JournalListeners()
  const write = async <T>(
    networkId: string | null,
    work: (transaction: WriteTransaction) => Promise<T>,
  ): Promise<T> => {
    const transaction = await store.begin()
    try {
      const result = await work(transaction)
      await transaction.commit()
      if (networkId !== null) listeners.tell(networkId)
      return result
    } catch (error) {
      await transaction.rollback()
      throw readable(error)
    }
  }
  const read = async (networkId: string, column: 'about' | 'kind' | 'id', values: readonly string[]) => {
    const networkKey = await ids.networkKey(networkId)
    if (networkKey === null || values.length === 0) return []
    const query = store.db.selectFrom('journal').selectAll().where('network_key', '=', networkKey)
    const rows = await query
      .where(column, 'in', [...values])
      .orderBy('sequence')
      .execute()
    return rows.map((row) => entryFromRow(row, networkId))
  }
  return {
    async append(entries) {
      if (entries.length === 0) return 0
      return await write(entries[0]!.networkId, async ({ db }) => {
        let added = 0
        for (const entry of entries) {
          const networkKey = await ids.networkKey(entry.networkId)
          if (networkKey === null) throw unknownNetwork(entry.networkId)
          const { top } = await db
            .selectFrom('journal')
            .select((select) => select.fn.max('sequence').as('top'))
            .where('network_key', '=', networkKey)
            .executeTakeFirstOrThrow()
          const result = await db
            .insertInto('journal')
            .values({
              network_key: networkKey,
              sequence: Number(top ?? 0) + 1,
              id: entry.id,
              about: entry.about,
              kind: entry.kind,
              at_ms: instantMs(entry.atUtc),
              by_person: entry.by,
              body: JSON.stringify(entry.body),
              taken_back_by: null,
              taken_back_at_ms: null,
            })
            .onConflict((conflict) => conflict.columns(['network_key', 'id']).doNothing())
            .executeTakeFirst()
          added += Number(result.numInsertedOrUpdatedRows ?? 0)
        }
        return added
      })
    },
    about: (networkId, about) => read(networkId, 'about', about),
    ofKinds: (networkId, kinds) => read(networkId, 'kind', kinds),
    entry: async (networkId, id) => (await read(networkId, 'id', [id]))[0] ?? null,
    async takeBack(networkId, id, by, atUtc) {
      const networkKey = (await ids.networkKey(networkId)) ?? -1
      return await write(networkId, async ({ db }) => {
        const result = await db
          .updateTable('journal')
          .set({ taken_back_by: by, taken_back_at_ms: instantMs(atUtc) })
          .where('network_key', '=', networkKey)
          .where('id', '=', id)
          .where('taken_back_by', 'is', null)
          .executeTakeFirst()
        return Number(result.numUpdatedRows) > 0
      })
    },
    async putBack(networkId, id) {
      const networkKey = (await ids.networkKey(networkId)) ?? -1
      return await write(networkId, async ({ db }) => {
        const result = await db
          .updateTable('journal')
          .set({ taken_back_by: null, taken_back_at_ms: null })
          .where('network_key', '=', networkKey)
          .where('id', '=', id)
          .where('taken_back_by', 'is not', null)
          .executeTakeFirst()
        return Number(result.numUpdatedRows) > 0
      })
    },
    async erase(networkId, about) {
      const networkKey = (await ids.networkKey(networkId)) ?? -1
      if (about.length === 0) return 0
      return await write(networkId, async ({ db }) => {
        const query = db.deleteFrom('journal').where('network_key', '=', networkKey)
        const result = await query.where('about', 'in', [...about]).executeTakeFirst()
        return Number(result.numDeletedRows)
      })
    },
    async writtenBy(personId) {
      const rows = await store.db
        .selectFrom('journal')
        .innerJoin('network', 'network.network_key', 'journal.network_key')
        .selectAll('journal')
        .select('network.id as network_id')
        .where('by_person', '=', personId)
        .orderBy('journal.network_key')
        .orderBy('sequence')
        .execute()
      return rows.map((row) => entryFromRow(row, row.network_id))
    },
    async forgetPerson(personId) {
      await write(null, async ({ db }) => {
        await db.deleteFrom('journal').where('about', '=', `person ${personId}`).execute()
        await db.updateTable('journal').set({ by_person: '' }).where('by_person', '=', personId).execute()
        await db.updateTable('journal').set({ taken_back_by: '' }).where('taken_back_by', '=', personId).execute()
      })
    },
    listen: (listener) => listeners.add(listener),
  }
}

function entryFromRow(row: JournalTable, networkId: string): JournalEntry {
  return {
    id: row.id,
    networkId,
    about: row.about,
    kind: row.kind,
    atUtc: evenInstant(row.at_ms),
    by: row.by_person,
    body: JSON.parse(row.body),
    takenBack:
      row.taken_back_by === null || row.taken_back_at_ms === null
        ? null
        : { by: row.taken_back_by, atUtc: evenInstant(row.taken_back_at_ms) },
  }
}
