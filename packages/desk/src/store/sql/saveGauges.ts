import type { Kysely } from 'kysely'
import type { Gauge, SaveResult } from '../../ports/ledger.ts'
import { rowFromGauge } from './rowShapes.ts'
import type { GaugeTable, Tables } from './tables.ts'

const ROWS_A_STATEMENT = 500

/** Insert or update gauges of one network by their code; a gauge that is there keeps its id and key. */
export async function saveGaugeRows(
  db: Kysely<Tables>,
  networkKey: number,
  gauges: readonly Gauge[],
): Promise<SaveResult> {
  const existing = await db.selectFrom('gauge').selectAll().where('network_key', '=', networkKey).execute()
  const byCode = new Map(existing.map((row) => [row.code, row]))
  let nextKey = existing.reduce((largest, row) => Math.max(largest, row.gauge_key), 0) + 1
  const rows = new Map<string, GaugeTable>()
  const result: SaveResult = { added: 0, changed: 0, same: 0 }
  for (const gauge of gauges) {
    const before = byCode.get(gauge.code)
    const values = rowFromGauge(gauge)
    if (before !== undefined && isSame(before, values)) {
      result.same++
      continue
    }
    const row: GaugeTable =
      before === undefined
        ? { network_key: networkKey, gauge_key: nextKey++, id: gauge.id, ...values }
        : { ...before, ...values }
    if (before === undefined) result.added++
    else result.changed++
    byCode.set(gauge.code, row)
    rows.set(gauge.code, row)
  }
  const all = [...rows.values()]
  for (let from = 0; from < all.length; from += ROWS_A_STATEMENT) {
    await db
      .insertInto('gauge')
      .values(all.slice(from, from + ROWS_A_STATEMENT))
      .onConflict((conflict) =>
        conflict.columns(['network_key', 'gauge_key']).doUpdateSet((eb) => ({
          name: eb.ref('excluded.name'),
          lat_deg: eb.ref('excluded.lat_deg'),
          lon_deg: eb.ref('excluded.lon_deg'),
          elevation_m: eb.ref('excluded.elevation_m'),
          area: eb.ref('excluded.area'),
          observer_name: eb.ref('excluded.observer_name'),
          resolution_um: eb.ref('excluded.resolution_um'),
          opened_on: eb.ref('excluded.opened_on'),
          closed_on: eb.ref('excluded.closed_on'),
        })),
      )
      .execute()
  }
  return result
}

function isSame(before: GaugeTable, values: ReturnType<typeof rowFromGauge>): boolean {
  return Object.entries(values).every(([name, value]) => before[name as keyof GaugeTable] === value)
}
