/** The trail of what was done in SQL: only ever added to, read newest first. */
import { formatInstant } from '@gaugewright/science'
import type { Kysely } from 'kysely'
import type { AuditQuery, StoredAuditEntry } from '../../ports/access.ts'
import { instantMs } from '../instantMs.ts'
import type { Tables } from './tables.ts'

export async function insertAudit(db: Kysely<Tables>, entry: StoredAuditEntry): Promise<void> {
  const { id, atUtc, personId, door, act, subject, result } = entry
  const row = { id, at_ms: instantMs(atUtc), person_id: personId, door, act, subject, result }
  await db.insertInto('audit').values(row).execute()
}

export async function auditRows(
  db: Kysely<Tables>,
  { beforeId, personId, limit }: AuditQuery,
): Promise<StoredAuditEntry[]> {
  let query = db.selectFrom('audit').selectAll()
  if (beforeId !== undefined) query = query.where('id', '<', beforeId)
  if (personId !== undefined) {
    query = query.where((either) => either.or([either('person_id', '=', personId), either('subject', '=', personId)]))
  }
  return (await query.orderBy('id', 'desc').limit(limit).execute()).map((row) => ({
    id: row.id,
    atUtc: formatInstant(row.at_ms),
    personId: row.person_id,
    door: row.door as StoredAuditEntry['door'],
    act: row.act,
    subject: row.subject,
    result: row.result as StoredAuditEntry['result'],
  }))
}
