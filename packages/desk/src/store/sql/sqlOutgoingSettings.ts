/** Settings of mail and reminders over SQL: each a row after the last. */
import type { MailSettings, ReminderSettings } from '@gaugewright/contract'
import type { Kysely } from 'kysely'
import type { OutgoingSettingsStore, SetBy } from '../../ports/outgoingSettings.ts'
import { instantMs } from '../instantMs.ts'
import { evenInstant } from '../outbox/evenInstant.ts'
import { unknownNetwork } from '../unknown.ts'
import type { Tables } from './tables.ts'
import type { Store } from './writeTransaction.ts'

type What = 'mail' | 'reminders'

/** @param readable turns the database's own errors into LedgerErrors */
export function sqlOutgoingSettings(store: Store, readable: (error: unknown) => unknown): OutgoingSettingsStore {
  const write = async <T>(work: (db: Kysely<Tables>) => Promise<T>): Promise<T> => {
    const transaction = await store.begin()
    try {
      const result = await work(transaction.db)
      await transaction.commit()
      return result
    } catch (error) {
      await transaction.rollback()
      throw readable(error)
    }
  }
  const append = async (networkId: string, what: What, set: SetBy<unknown>): Promise<void> =>
    await write(async (db) => {
      const networkKey = await networkKeyOf(db, networkId)
      const sequence = await nextSequence(db, 'outgoing_setting', networkKey)
      const row = { what, settings: JSON.stringify(set.settings), by_name: set.by, set_at_ms: instantMs(set.setAtUtc) }
      await db
        .insertInto('outgoing_setting')
        .values({ network_key: networkKey, sequence, ...row })
        .execute()
    })
  const last = async <T>(networkId: string, what: What): Promise<SetBy<T> | null> => {
    const row = await store.db
      .selectFrom('outgoing_setting')
      .innerJoin('network', 'network.network_key', 'outgoing_setting.network_key')
      .selectAll('outgoing_setting')
      .where('network.id', '=', networkId)
      .where('what', '=', what)
      .orderBy('sequence', 'desc')
      .executeTakeFirst()
    if (row === undefined) return null
    const settings = JSON.parse(row.settings) as T | null
    return settings === null ? null : { settings, by: row.by_name, setAtUtc: evenInstant(row.set_at_ms) }
  }
  return {
    mail: async (networkId) => await last<MailSettings>(networkId, 'mail'),
    reminders: async (networkId) => await last<ReminderSettings>(networkId, 'reminders'),
    setMail: async (networkId, set) => await append(networkId, 'mail', set),
    setReminders: async (networkId, set) => await append(networkId, 'reminders', set),
    async choices(networkId) {
      const rows = await store.db
        .selectFrom('reminder_choice')
        .innerJoin('network', 'network.network_key', 'reminder_choice.network_key')
        .selectAll('reminder_choice')
        .where('network.id', '=', networkId)
        .orderBy('sequence')
        .execute()
      return new Map(
        rows.map((row) => [
          row.person_id,
          {
            personId: row.person_id,
            wants: row.wants === 1,
            way: row.way as 'mail' | 'text',
            phone: row.phone,
            by: row.by_name,
            chosenAtUtc: evenInstant(row.chosen_at_ms),
          },
        ]),
      )
    },
    async choose(networkId, choice) {
      await write(async (db) => {
        const networkKey = await networkKeyOf(db, networkId)
        await db
          .insertInto('reminder_choice')
          .values({
            network_key: networkKey,
            sequence: await nextSequence(db, 'reminder_choice', networkKey),
            person_id: choice.personId,
            wants: Number(choice.wants),
            way: choice.way,
            phone: choice.phone,
            by_name: choice.by,
            chosen_at_ms: instantMs(choice.chosenAtUtc),
          })
          .execute()
      })
    },
    async forgetPerson(personId) {
      await write(async (db) => await db.deleteFrom('reminder_choice').where('person_id', '=', personId).execute())
    },
    async linkSecret(networkId, fresh) {
      return await write(async (db) => {
        const networkKey = await networkKeyOf(db, networkId)
        const row = { network_key: networkKey, secret: fresh }
        await db
          .insertInto('reminder_key')
          .values(row)
          .onConflict((conflict) => conflict.doNothing())
          .execute()
        const query = db.selectFrom('reminder_key').select('secret').where('network_key', '=', networkKey)
        return (await query.executeTakeFirstOrThrow()).secret
      })
    },
  }
}

async function networkKeyOf(db: Kysely<Tables>, networkId: string): Promise<number> {
  const row = await db.selectFrom('network').select('network_key').where('id', '=', networkId).executeTakeFirst()
  if (row === undefined) throw unknownNetwork(networkId)
  return row.network_key
}

async function nextSequence(
  db: Kysely<Tables>,
  table: 'outgoing_setting' | 'reminder_choice',
  networkKey: number,
): Promise<number> {
  const last = await db
    .selectFrom(table)
    .select((eb) => eb.fn.max('sequence').as('sequence'))
    .where('network_key', '=', networkKey)
    .executeTakeFirst()
  return Number(last?.sequence ?? 0) + 1
}
