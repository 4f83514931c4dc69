/** Ids to the small keys of the tables and back. Keys never change, so what was looked up once is kept. */
import type { Kysely } from 'kysely'
import type { Tables } from './tables.ts'

interface NetworkIds {
  idOf: Map<number, string>
  keyOf: Map<string, number>
}

export class GaugeIds {
  readonly #db: Kysely<Tables>
  readonly #networkKeys = new Map<string, number>()
  readonly #networks = new Map<number, NetworkIds>()

  constructor(db: Kysely<Tables>) {
    this.#db = db
  }

  async networkKey(networkId: string): Promise<number | null> {
    const known = this.#networkKeys.get(networkId)
    if (known !== undefined) return known
    const row = await this.#db
      .selectFrom('network')
      .select('network_key')
      .where('id', '=', networkId)
      .executeTakeFirst()
    if (row === undefined) return null
    this.#networkKeys.set(networkId, row.network_key)
    return row.network_key
  }

  async gaugeKey(networkKey: number, gaugeId: string): Promise<number | null> {
    const known = this.#networks.get(networkKey)?.keyOf.get(gaugeId)
    return known ?? (await this.#refresh(networkKey)).keyOf.get(gaugeId) ?? null
  }

  /** Ids of all the keys given; looks again when one of them is new. */
  async idsOf(networkKey: number, keys: Iterable<number>): Promise<Map<number, string>> {
    const known = this.#networks.get(networkKey)
    if (known !== undefined) {
      let isComplete = true
      for (const key of keys) if (!known.idOf.has(key)) isComplete = false
      if (isComplete) return known.idOf
    }
    return (await this.#refresh(networkKey)).idOf
  }

  async #refresh(networkKey: number): Promise<NetworkIds> {
    const query = this.#db.selectFrom('gauge').select(['gauge_key', 'id']).where('network_key', '=', networkKey)
    const rows = await query.execute()
    const ids: NetworkIds = {
      idOf: new Map(rows.map((row) => [row.gauge_key, row.id])),
      keyOf: new Map(rows.map((row) => [row.id, row.gauge_key])),
    }
    this.#networks.set(networkKey, ids)
    return ids
  }
}
