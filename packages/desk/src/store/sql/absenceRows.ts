/** Announced absences in SQL. */
import type { Kysely } from 'kysely'
import type { AnnouncedAbsence } from '../../ports/absence.ts'
import { instantMs } from '../instantMs.ts'
import { epochDay } from './rowShapes.ts'
import type { Tables } from './tables.ts'

/** @returns false where the same gauge and days stand announced already: nothing is added then */
export async function insertAbsence(
  db: Kysely<Tables>,
  networkKey: number,
  gaugeKey: number,
  absence: Pick<AnnouncedAbsence, 'id' | 'firstDay' | 'lastDay' | 'announcedBy' | 'announcedAtUtc'>,
): Promise<boolean> {
  const days = { first_day: epochDay(absence.firstDay), last_day: epochDay(absence.lastDay) }
  const same = await db
    .selectFrom('absence')
    .select('id')
    .where('network_key', '=', networkKey)
    .where('gauge_key', '=', gaugeKey)
    .where('first_day', '=', days.first_day)
    .where('last_day', '=', days.last_day)
    .where('withdrawn_by', 'is', null)
    .executeTakeFirst()
  if (same !== undefined) return false
  const last = await db
    .selectFrom('absence')
    .select((eb) => eb.fn.max('sequence').as('sequence'))
    .where('network_key', '=', networkKey)
    .executeTakeFirst()
  const sequence = Number(last?.sequence ?? 0) + 1
  const query = db.selectFrom('absence').select('id').where('network_key', '=', networkKey)
  const taken = await query.where('id', '=', absence.id).executeTakeFirst()
  await db
    .insertInto('absence')
    .values({
      network_key: networkKey,
      sequence,
      // Withdrawn and saved again under the same name: both are kept.
      id: taken === undefined ? absence.id : `${absence.id} ${sequence}`,
      gauge_key: gaugeKey,
      ...days,
      announced_by: absence.announcedBy,
      announced_at_ms: instantMs(absence.announcedAtUtc),
      withdrawn_by: null,
      withdrawn_at_ms: null,
    })
    .execute()
  return true
}
