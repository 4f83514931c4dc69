/** Decisions in SQL: appended one after the other within a transaction, each under the day of its reading. */
import type { Decision } from '@gaugewright/science'
import type { Kysely } from 'kysely'
import { unknownReading } from '../unknown.ts'
import { rowFromDecision } from './rowShapes.ts'
import type { DecisionTable, ReadingTable, Tables } from './tables.ts'

type Place = Pick<ReadingTable, 'id' | 'gauge_key' | 'last_day'>

/** Ids asked for at once, below the number of parameters that any database takes. */
const AT_ONCE = 500

/** @throws {LedgerError} READING_UNKNOWN, before anything is written */
export async function insertDecisions(
  db: Kysely<Tables>,
  networkKey: number,
  decisions: readonly Decision[],
): Promise<void> {
  if (decisions.length === 0) return
  const places = await placesOf(db, networkKey, [...new Set(decisions.map(({ readingId }) => readingId))])
  const last = await db
    .selectFrom('decision')
    .select((eb) => eb.fn.max('sequence').as('sequence'))
    .where('network_key', '=', networkKey)
    .executeTakeFirst()
  let sequence = Number(last?.sequence ?? 0)
  const rows = decisions.map((decision): DecisionTable => {
    const place = places.get(decision.readingId)
    if (place === undefined) throw unknownReading(decision.readingId)
    sequence++
    const { gauge_key, last_day } = place
    return { network_key: networkKey, gauge_key, last_day, sequence, ...rowFromDecision(decision) }
  })
  for (const row of rows) await db.insertInto('decision').values(row).execute()
}

async function placesOf(db: Kysely<Tables>, networkKey: number, ids: readonly string[]): Promise<Map<string, Place>> {
  const places = new Map<string, Place>()
  for (let first = 0; first < ids.length; first += AT_ONCE) {
    const rows = await db
      .selectFrom('reading')
      .select(['id', 'gauge_key', 'last_day'])
      .where('network_key', '=', networkKey)
      .where('id', 'in', ids.slice(first, first + AT_ONCE))
      .execute()
    for (const row of rows) places.set(row.id, row)
  }
  return places
}
