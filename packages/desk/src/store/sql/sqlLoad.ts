/** One delivery into an SQL ledger: everything in one transaction, kept at commit or not at all. */
import type { Reading } from '@gaugewright/science'
import type { Delivery } from '../../ports/deliveries.ts'
import type { AppendResult, Gauge, LedgerLoad, NetworkSettings, SaveResult } from '../../ports/ledger.ts'
import { checkReading } from '../checkReading.ts'
import { instantMs } from '../instantMs.ts'
import { unknownGauge, unknownNetwork } from '../unknown.ts'
import { insertDelivery } from './deliveryRows.ts'
import { rowFromNetwork } from './rowShapes.ts'
import { saveGaugeRows } from './saveGauges.ts'
import type { NewReadingRow, WriteTransaction } from './writeTransaction.ts'

/** So many readings that looking up all gauges costs less than naming theirs. */
const FEW = 30

export class SqlLoad implements LedgerLoad {
  readonly #transaction: WriteTransaction
  readonly #networkId: string
  #networkKey: number | null = null
  #gaugeKeys: Map<string, number> | null = null
  readonly #instants = new Map<string, number>()

  constructor(transaction: WriteTransaction, networkId: string) {
    this.#transaction = transaction
    this.#networkId = networkId
  }

  async saveNetwork(network: NetworkSettings): Promise<void> {
    const row = rowFromNetwork(network)
    await this.#transaction.db
      .insertInto('network')
      .values(row as typeof row & { network_key: number })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute()
  }

  async saveGauges(gauges: readonly Gauge[]): Promise<SaveResult> {
    const result: SaveResult = { added: 0, changed: 0, same: 0 }
    for (const networkId of new Set(gauges.map((gauge) => gauge.networkId))) {
      const own = gauges.filter((gauge) => gauge.networkId === networkId)
      const saved = await saveGaugeRows(this.#transaction.db, await this.networkKey(networkId), own)
      result.added += saved.added
      result.changed += saved.changed
      result.same += saved.same
    }
    this.#gaugeKeys = null
    return result
  }

  async appendReadings(readings: readonly Reading[]): Promise<AppendResult> {
    this.#networkKey ??= await this.networkKey(this.#networkId)
    // A phone sends a reading or a few: then only their gauges are looked up.
    this.#gaugeKeys ??= readings.length > FEW ? await this.#loadGaugeKeys(this.#networkKey) : null
    const gaugeKeys = this.#gaugeKeys ?? (await this.#loadGaugeKeys(this.#networkKey, readings))
    const rows: NewReadingRow[] = []
    for (const reading of readings) {
      const gaugeKey = gaugeKeys.get(reading.gaugeId)
      if (gaugeKey === undefined) throw unknownGauge(reading.gaugeId, this.#networkId)
      const { firstDay, lastDay } = checkReading(reading)
      rows.push({
        network_key: this.#networkKey,
        gauge_key: gaugeKey,
        last_day: lastDay,
        first_day: firstDay,
        id: reading.id,
        amount_um: reading.amountUm,
        is_trace: reading.isTrace ? 1 : 0,
        starts_at_ms: this.#instant(reading.startsAtUtc),
        ends_at_ms: this.#instant(reading.endsAtUtc),
        received_at_ms: this.#instant(reading.receivedAtUtc),
        text: reading.text,
        unit: reading.unit,
        remark: reading.remark,
        door: reading.door,
        supersedes: reading.supersedes,
        confirmed: reading.confirmed === undefined ? null : JSON.stringify(reading.confirmed),
      })
    }
    const result = await this.#transaction.appendReadings(rows)
    await this.#count(this.#networkKey, result)
    return result
  }

  async keepDelivery(delivery: Delivery): Promise<void> {
    this.#networkKey ??= await this.networkKey(this.#networkId)
    await insertDelivery(this.#transaction.db, this.#networkKey, delivery)
  }

  async commit(): Promise<void> {
    await this.#transaction.commit()
  }

  async rollback(): Promise<void> {
    await this.#transaction.rollback()
  }

  async networkKey(networkId: string): Promise<number> {
    const { db } = this.#transaction
    const row = await db.selectFrom('network').select('network_key').where('id', '=', networkId).executeTakeFirst()
    if (row === undefined) throw unknownNetwork(networkId)
    return row.network_key
  }

  /** @param of  only the gauges of these readings; all when left out */
  async #loadGaugeKeys(networkKey: number, of?: readonly Reading[]): Promise<Map<string, number>> {
    const { db } = this.#transaction
    const all = db.selectFrom('gauge').select(['id', 'gauge_key']).where('network_key', '=', networkKey)
    const wanted = of === undefined ? null : [...new Set(of.map(({ gaugeId }) => gaugeId))]
    const rows = await (wanted === null ? all : all.where('id', 'in', wanted)).execute()
    return new Map(rows.map((row) => [row.id, row.gauge_key]))
  }

  async #count(networkKey: number, { stored, superseding }: AppendResult): Promise<void> {
    if (stored === 0) return
    const current = stored - superseding
    await this.#transaction.db
      .insertInto('reading_count')
      .values({ network_key: networkKey, readings: current, stored })
      .onConflict((conflict) =>
        conflict.column('network_key').doUpdateSet((eb) => ({
          readings: eb('reading_count.readings', '+', current),
          stored: eb('reading_count.stored', '+', stored),
        })),
      )
      .execute()
  }

  /** A delivery names the same few instants over and over. */
  #instant(text: string): number {
    const known = this.#instants.get(text)
    if (known !== undefined) return known
    const ms = instantMs(text)
    if (this.#instants.size > 50_000) this.#instants.clear()
    this.#instants.set(text, ms)
    return ms
  }
}
