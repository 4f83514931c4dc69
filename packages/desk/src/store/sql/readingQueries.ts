/**
 * Reading the current readings back. Current means that no other reading supersedes it; a small partial index on
 * `supersedes` answers that. A day is found by the index on (network_key, last_day, gauge_key), a gauge by the key itself.
 */
import { isoFromEpochDay, type Reading } from '@gaugewright/science'
import { type Kysely, sql } from 'kysely'
import type { DayRange, ReadingAmount } from '../../ports/ledger.ts'
import type { GaugeIds } from './gaugeIds.ts'
import { readingFromRow, rowTexts } from './rowShapes.ts'
import type { ReadingTable, Tables } from './tables.ts'

/** Rows held at a time while amounts are streamed, about. */
const ROWS_A_BLOCK = 20_000

export class ReadingQueries {
  readonly #db: Kysely<Tables>
  readonly #ids: GaugeIds

  constructor(db: Kysely<Tables>, ids: GaugeIds) {
    this.#db = db
    this.#ids = ids
  }

  async ofDays(networkId: string, fromDay: number, toDay: number): Promise<Reading[]> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) return []
    const query = this.#current(networkKey, fromDay, toDay).selectAll()
    const rows = await query.orderBy('last_day').orderBy('gauge_key').orderBy('first_day').execute()
    return (await this.#readings(networkKey, rows)).sort(byDayThenGauge)
  }

  async ofGauge(networkId: string, gaugeId: string, fromDay: number, toDay: number): Promise<Reading[]> {
    const networkKey = await this.#ids.networkKey(networkId)
    const gaugeKey = networkKey === null ? null : await this.#ids.gaugeKey(networkKey, gaugeId)
    if (networkKey === null || gaugeKey === null) return []
    const query = this.#current(networkKey, fromDay, toDay).where('gauge_key', '=', gaugeKey).selectAll()
    const rows = await query.orderBy('last_day').orderBy('first_day').execute()
    const say = rowTexts()
    return rows.map((row) => readingFromRow(row, gaugeId, say))
  }

  /** Block by block of days, so that nothing stays open between blocks and other calls may come in between. */
  async *amounts(networkId: string, fromDay: number, toDay: number): AsyncGenerator<ReadingAmount> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) return
    const range = await this.#dayLimits(networkKey)
    const { day } = rowTexts()
    const lastDay = Math.min(toDay, range.last ?? fromDay - 1)
    let from = Math.max(fromDay, range.first ?? toDay + 1)
    let daysABlock = 32
    while (from <= lastDay) {
      const to = Math.min(lastDay, from + daysABlock - 1)
      const rows = await this.#current(networkKey, from, to)
        .select(['id', 'gauge_key', 'first_day', 'last_day', 'amount_um', 'is_trace'])
        .orderBy('last_day')
        .orderBy('gauge_key')
        .execute()
      const ids = await this.#ids.idsOf(networkKey, keysOf(rows))
      const amounts = rows.map((row) => ({
        readingId: row.id,
        gaugeId: ids.get(row.gauge_key) ?? '',
        firstDay: day(row.first_day),
        lastDay: day(row.last_day),
        amountUm: row.amount_um,
        isTrace: row.is_trace === 1,
      }))
      yield* amounts.sort(byDayThenGauge)
      from = to + 1
      daysABlock = Math.max(1, Math.min(4096, Math.floor((ROWS_A_BLOCK * daysABlock) / Math.max(1, rows.length))))
    }
  }

  async byId(networkId: string, id: string): Promise<{ reading: Reading; superseded: Reading[] } | null> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) return null
    const rows: ReadingTable[] = []
    for (let next: string | null = id; next !== null; ) {
      const query = this.#db.selectFrom('reading').selectAll().where('network_key', '=', networkKey)
      const row: ReadingTable | undefined = await query.where('id', '=', next).executeTakeFirst()
      if (row === undefined) break
      rows.push(row)
      next = row.supersedes
    }
    const [reading, ...superseded] = await this.#readings(networkKey, rows)
    return reading === undefined ? null : { reading, superseded }
  }

  async dayRange(networkId: string): Promise<DayRange | null> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) return null
    const { first, last } = await this.#dayLimits(networkKey)
    if (first === null || last === null) return null
    const kept = await this.#db
      .selectFrom('reading_count')
      .select(['readings', 'stored'])
      .where('network_key', '=', networkKey)
      .executeTakeFirst()
    const { readings, stored } = kept ?? { readings: 0, stored: 0 }
    return { firstDay: isoFromEpochDay(first), lastDay: isoFromEpochDay(last), readings, stored }
  }

  #current(networkKey: number, fromDay: number, toDay: number) {
    return this.#db
      .selectFrom('reading')
      .where('reading.network_key', '=', networkKey)
      .where('reading.last_day', '>=', fromDay)
      .where('reading.last_day', '<=', toDay)
      .where(({ not, exists, selectFrom }) =>
        not(
          exists(
            selectFrom('reading as newer')
              .select(sql`1`.as('one'))
              .whereRef('newer.network_key', '=', 'reading.network_key')
              .whereRef('newer.supersedes', '=', 'reading.id'),
          ),
        ),
      )
  }

  /** First and last day, each by one look into the index. */
  async #dayLimits(networkKey: number): Promise<{ first: number | null; last: number | null }> {
    const limit = (direction: 'asc' | 'desc') =>
      this.#db
        .selectFrom('reading')
        .select('last_day')
        .where('network_key', '=', networkKey)
        .orderBy('last_day', direction)
        .limit(1)
        .executeTakeFirst()
    return { first: (await limit('asc'))?.last_day ?? null, last: (await limit('desc'))?.last_day ?? null }
  }

  async #readings(networkKey: number, rows: readonly ReadingTable[]): Promise<Reading[]> {
    const ids = await this.#ids.idsOf(networkKey, keysOf(rows))
    const say = rowTexts()
    return rows.map((row) => readingFromRow(row, ids.get(row.gauge_key) ?? '', say))
  }
}

function* keysOf(rows: readonly { gauge_key: number }[]): Generator<number> {
  for (const row of rows) yield row.gauge_key
}

/** By lastDay, then gaugeId in plain character order, then firstDay. */
function byDayThenGauge(
  one: { lastDay: string; gaugeId: string; firstDay: string },
  other: { lastDay: string; gaugeId: string; firstDay: string },
): number {
  if (one.lastDay !== other.lastDay) return one.lastDay < other.lastDay ? -1 : 1
  if (one.gaugeId !== other.gaugeId) return one.gaugeId < other.gaugeId ? -1 : 1
  return one.firstDay < other.firstDay ? -1 : one.firstDay > other.firstDay ? 1 : 0
}
