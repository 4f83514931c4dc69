/** Deliveries in SQL. What was answered is kept packed: a row for each of ten thousand readings is a few kilobytes. */
import { gunzipSync, gzipSync } from 'node:zlib'
import { formatInstant } from '@gaugewright/science'
import type { Kysely } from 'kysely'
import type { Delivery } from '../../ports/deliveries.ts'
import { instantMs } from '../instantMs.ts'
import { deliveryTaken } from '../unknown.ts'
import type { Tables } from './tables.ts'

/** @throws {LedgerError} ID_TAKEN */
export async function insertDelivery(db: Kysely<Tables>, networkKey: number, delivery: Delivery): Promise<void> {
  if ((await deliveryWith(db, networkKey, delivery.key)) !== null) throw deliveryTaken()
  await db
    .insertInto('delivery')
    .values({
      network_key: networkKey,
      key: delivery.key,
      body_hash: delivery.bodyHash,
      sender: delivery.sender,
      name: delivery.name,
      received_at_ms: instantMs(delivery.receivedAtUtc),
      answer: gzipSync(delivery.answer),
    })
    .execute()
}

export async function deliveryWith(db: Kysely<Tables>, networkKey: number, key: string): Promise<Delivery | null> {
  const query = db.selectFrom('delivery').selectAll().where('network_key', '=', networkKey).where('key', '=', key)
  const row = await query.executeTakeFirst()
  if (row === undefined) return null
  return {
    key: row.key,
    bodyHash: row.body_hash,
    sender: row.sender,
    name: row.name,
    receivedAtUtc: formatInstant(row.received_at_ms),
    answer: gunzipSync(row.answer).toString('utf8'),
  }
}
