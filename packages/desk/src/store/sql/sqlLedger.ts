/** The ledger over SQL, for any database that Kysely speaks. What differs between databases is behind Store. */
import type { Decision, IsoDay, Reading } from '@gaugewright/science'
import { isoFromEpochDay } from '@gaugewright/science'
import type { Delivery } from '../../ports/deliveries.ts'
import type {
  Absence,
  AppendResult,
  DayRange,
  Gauge,
  Ledger,
  LedgerLoad,
  MapLayer,
  NetworkSettings,
  ReadingAmount,
  RuleSetting,
  SaveResult,
} from '../../ports/ledger.ts'
import { unknownGauge, unknownNetwork } from '../unknown.ts'
import { insertAbsence } from './absenceRows.ts'
import { insertDecisions } from './decisionRows.ts'
import { deliveryWith } from './deliveryRows.ts'
import { GaugeIds } from './gaugeIds.ts'
import { ReadingQueries } from './readingQueries.ts'
import { decisionFromRow, epochDay, gaugeFromRow, networkFromRow } from './rowShapes.ts'
import { insertRuleSetting, ruleSettingsOf } from './ruleSettingRows.ts'
import { SqlLoad } from './sqlLoad.ts'
import type { MapLayerTable } from './tables.ts'
import type { Store, WriteTransaction } from './writeTransaction.ts'

export class SqlLedger implements Ledger {
  readonly #store: Store
  readonly #readable: (error: unknown) => unknown
  readonly #ids: GaugeIds
  readonly #queries: ReadingQueries

  /** @param readable turns the database's own errors into LedgerErrors */
  constructor(store: Store, readable: (error: unknown) => unknown) {
    this.#store = store
    this.#readable = readable
    this.#ids = new GaugeIds(store.db)
    this.#queries = new ReadingQueries(store.db, this.#ids)
  }

  async load(networkId: string): Promise<LedgerLoad> {
    return new SqlLoad(await this.#store.begin(), networkId)
  }

  async networks(): Promise<NetworkSettings[]> {
    const rows = await this.#store.db.selectFrom('network').selectAll().orderBy('network_key').execute()
    return rows.map(networkFromRow)
  }

  async saveNetwork(network: NetworkSettings): Promise<void> {
    await this.#write((transaction) => new SqlLoad(transaction, network.id).saveNetwork(network))
  }

  async gauges(networkId: string): Promise<Gauge[]> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) return []
    const query = this.#store.db.selectFrom('gauge').selectAll().where('network_key', '=', networkKey)
    return (await query.orderBy('code').execute()).map((row) => gaugeFromRow(row, networkId))
  }

  async gauge(networkId: string, idOrCode: string): Promise<Gauge | null> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) return null
    const query = this.#store.db.selectFrom('gauge').selectAll().where('network_key', '=', networkKey)
    const row =
      (await query.where('id', '=', idOrCode).executeTakeFirst()) ??
      (await query.where('code', '=', idOrCode).executeTakeFirst())
    return row === undefined ? null : gaugeFromRow(row, networkId)
  }

  async saveGauges(gauges: readonly Gauge[]): Promise<SaveResult> {
    return await this.#write((transaction) => new SqlLoad(transaction, '').saveGauges(gauges))
  }

  async appendReadings(networkId: string, readings: readonly Reading[]): Promise<AppendResult> {
    return await this.#write((transaction) => new SqlLoad(transaction, networkId).appendReadings(readings))
  }

  async readings(networkId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Reading[]> {
    return await this.#queries.ofDays(networkId, epochDay(fromDay), epochDay(toDay))
  }

  async readingsOfGauge(networkId: string, gaugeId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Reading[]> {
    return await this.#queries.ofGauge(networkId, gaugeId, epochDay(fromDay), epochDay(toDay))
  }

  async *readingAmounts(networkId: string, fromDay: IsoDay, toDay: IsoDay): AsyncGenerator<ReadingAmount> {
    yield* this.#queries.amounts(networkId, epochDay(fromDay), epochDay(toDay))
  }

  async reading(networkId: string, id: string): Promise<{ reading: Reading; superseded: Reading[] } | null> {
    return await this.#queries.byId(networkId, id)
  }

  async delivery(networkId: string, key: string): Promise<Delivery | null> {
    const networkKey = await this.#ids.networkKey(networkId)
    return networkKey === null ? null : await deliveryWith(this.#store.db, networkKey, key)
  }

  async dayRange(networkId: string): Promise<DayRange | null> {
    return await this.#queries.dayRange(networkId)
  }

  async appendDecision(networkId: string, decision: Decision): Promise<void> {
    await this.appendDecisions(networkId, [decision])
  }

  async appendDecisions(networkId: string, decisions: readonly Decision[]): Promise<void> {
    await this.#write(async ({ db }) => insertDecisions(db, await this.#networkKey(networkId), decisions))
  }

  async decisions(networkId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Decision[]> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) return []
    const query = this.#store.db
      .selectFrom('decision')
      .selectAll()
      .where('network_key', '=', networkKey)
      .where('last_day', '>=', epochDay(fromDay))
      .where('last_day', '<=', epochDay(toDay))
    return (await query.orderBy('sequence').execute()).map(decisionFromRow)
  }

  async appendRuleSetting(networkId: string, setting: RuleSetting): Promise<void> {
    await this.#write(async ({ db }) => insertRuleSetting(db, await this.#networkKey(networkId), setting))
  }

  async ruleSettings(networkId: string): Promise<RuleSetting[]> {
    const networkKey = await this.#ids.networkKey(networkId)
    return networkKey === null ? [] : await ruleSettingsOf(this.#store.db, networkKey)
  }

  async forgetPerson(personId: string): Promise<void> {
    const nameless = { by_name: '', by_person: null }
    await this.#write(async ({ db }) => {
      await db.updateTable('decision').set(nameless).where('by_person', '=', personId).execute()
      await db.updateTable('rule_setting').set(nameless).where('by_person', '=', personId).execute()
    })
  }

  async decisionsBy(personId: string): Promise<Decision[]> {
    const query = this.#store.db.selectFrom('decision').selectAll().where('by_person', '=', personId)
    return (await query.orderBy('decided_at_ms').orderBy('id').execute()).map(decisionFromRow)
  }

  async absences(networkId: string, fromDay: IsoDay, toDay: IsoDay): Promise<Absence[]> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) return []
    const rows = await this.#store.db
      .selectFrom('absence')
      .innerJoin('gauge', (join) =>
        join.onRef('gauge.network_key', '=', 'absence.network_key').onRef('gauge.gauge_key', '=', 'absence.gauge_key'),
      )
      .select(['gauge.id as gauge_id', 'absence.first_day', 'absence.last_day'])
      .where('absence.network_key', '=', networkKey)
      .where('absence.first_day', '<=', epochDay(toDay))
      .where('absence.last_day', '>=', epochDay(fromDay))
      .where('absence.withdrawn_by', 'is', null)
      .orderBy('absence.first_day')
      .orderBy('gauge.id')
      .execute()
    return rows.map((row) => ({
      networkId,
      gaugeId: row.gauge_id,
      firstDay: isoFromEpochDay(row.first_day),
      lastDay: isoFromEpochDay(row.last_day),
    }))
  }

  async saveAbsence(absence: Absence): Promise<void> {
    const { gaugeId, firstDay, lastDay } = absence
    await this.#write(async ({ db }) => {
      const networkKey = await this.#networkKey(absence.networkId)
      const gaugeKey = await this.#ids.gaugeKey(networkKey, gaugeId)
      if (gaugeKey === null) throw unknownGauge(gaugeId, absence.networkId)
      const id = `${gaugeId} ${firstDay} ${lastDay}`
      const announced = { id, announcedBy: 'coordinator', announcedAtUtc: '1970-01-01T00:00:00Z' }
      await insertAbsence(db, networkKey, gaugeKey, { ...announced, firstDay, lastDay })
    })
  }

  async layers(networkId: string): Promise<MapLayer[]> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) return []
    const query = this.#store.db.selectFrom('map_layer').selectAll().where('network_key', '=', networkKey)
    const rows = await query.orderBy('kind').orderBy('name').execute()
    return rows.map((row) => ({
      networkId,
      name: row.name,
      kind: row.kind as MapLayer['kind'],
      geojson: JSON.parse(row.geojson) as unknown,
    }))
  }

  async saveLayer(layer: MapLayer): Promise<void> {
    await this.#write(async ({ db }) => {
      const row: MapLayerTable = {
        network_key: await this.#networkKey(layer.networkId),
        kind: layer.kind,
        name: layer.name,
        geojson: JSON.stringify(layer.geojson),
      }
      await db
        .insertInto('map_layer')
        .values(row)
        .onConflict((conflict) =>
          conflict.columns(['network_key', 'kind', 'name']).doUpdateSet({ geojson: row.geojson }),
        )
        .execute()
    })
  }

  async cached(networkId: string, key: string): Promise<{ version: string; body: string } | null> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) return null
    const query = this.#store.db.selectFrom('cache').select(['version', 'body'])
    return (await query.where('network_key', '=', networkKey).where('key', '=', key).executeTakeFirst()) ?? null
  }

  async saveCached(networkId: string, key: string, version: string, body: string): Promise<void> {
    await this.#write(async ({ db }) => {
      await db
        .insertInto('cache')
        .values({ network_key: await this.#networkKey(networkId), key, version, body })
        .onConflict((conflict) => conflict.columns(['network_key', 'key']).doUpdateSet({ version, body }))
        .execute()
    })
  }

  async close(): Promise<void> {
    await this.#store.close()
  }

  /** One whole transaction: kept when `work` succeeds, gone without a trace when it does not. */
  async #write<T>(work: (transaction: WriteTransaction) => Promise<T>): Promise<T> {
    const transaction = await this.#store.begin('together')
    try {
      const result = await work(transaction)
      await transaction.commit()
      return result
    } catch (error) {
      await transaction.rollback()
      throw this.#readable(error)
    }
  }

  async #networkKey(networkId: string): Promise<number> {
    const networkKey = await this.#ids.networkKey(networkId)
    if (networkKey === null) throw unknownNetwork(networkId)
    return networkKey
  }
}
