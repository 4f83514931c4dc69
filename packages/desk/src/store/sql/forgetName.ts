/** Takes a name out of every place where it stands beside something done without the id of its person. */
import type { Kysely } from 'kysely'
import type { Tables } from './tables.ts'

/** People of the same name cannot be told apart there: the name leaves for all of them. */
export async function forgetName(db: Kysely<Tables>, name: string): Promise<void> {
  await db.updateTable('absence').set({ announced_by: '' }).where('announced_by', '=', name).execute()
  await db.updateTable('absence').set({ withdrawn_by: '' }).where('withdrawn_by', '=', name).execute()
  await db.updateTable('sender_key').set({ made_by: '' }).where('made_by', '=', name).execute()
  for (const table of ['photo', 'outgoing', 'outgoing_event', 'outgoing_setting', 'urgent_setting'] as const) {
    await db.updateTable(table).set({ by_name: '' }).where('by_name', '=', name).execute()
  }
}
