/** The quick way of readings into SQLite: prepared statements, one fast insert for what is new, a look only for the rest. */
import type { AppendResult } from '../../ports/ledger.ts'
import { LedgerError } from '../../ports/ledgerError.ts'
import type { NewReadingRow } from '../sql/writeTransaction.ts'
import type { Database, Statement } from './openDatabase.ts'

const columns = [
  'network_key',
  'gauge_key',
  'last_day',
  'first_day',
  'id',
  'amount_um',
  'is_trace',
  'starts_at_ms',
  'ends_at_ms',
  'received_at_ms',
  'text',
  'unit',
  'remark',
  'door',
  'supersedes',
  'confirmed',
  'version',
] as const

interface Latest {
  version: number
  id: string
  amount_um: number
  is_trace: number
  is_superseded: number
}

export class SqliteReadings {
  readonly #insertIfFirst: Statement
  readonly #insert: Statement
  readonly #latest: Statement
  readonly #target: Statement

  constructor(database: Database) {
    const insert = `insert into reading (${columns.join(', ')}) values (${columns.map(() => '?').join(', ')})`
    this.#insert = database.prepare(insert)
    this.#insertIfFirst = database.prepare(
      `${insert} on conflict (network_key, gauge_key, last_day, first_day, version) do nothing`,
    )
    this.#latest = database.prepare(`
      select version, id, amount_um, is_trace,
        exists (select 1 from reading newer where newer.network_key = reading.network_key and newer.supersedes = reading.id)
          as is_superseded
      from reading where network_key = ? and gauge_key = ? and last_day = ? and first_day = ?
      order by version desc limit 1`)
    this.#target = database.prepare('select gauge_key from reading where network_key = ? and id = ?')
  }

  append(rows: readonly NewReadingRow[]): AppendResult {
    const result: AppendResult = { stored: 0, already: 0, superseding: 0 }
    for (const row of rows) {
      if (row.supersedes === null && this.#run(this.#insertIfFirst, row, 1, null) === 1) result.stored++
      else this.#appendToInterval(row, result)
    }
    return result
  }

  #appendToInterval(row: NewReadingRow, result: AppendResult): void {
    const latest = this.#latest.get(row.network_key, row.gauge_key, row.last_day, row.first_day) as Latest | undefined
    if (latest === undefined) {
      this.#checkTarget(row)
      this.#run(this.#insert, row, 1, row.supersedes)
      result.stored++
      if (row.supersedes !== null) result.superseding++
      return
    }
    if (latest.amount_um === row.amount_um && latest.is_trace === row.is_trace) {
      result.already++
      return
    }
    const supersedes = latest.is_superseded === 1 ? null : latest.id
    this.#run(this.#insert, row, latest.version + 1, supersedes)
    result.stored++
    if (supersedes !== null) result.superseding++
  }

  /** A correction over other days must name a reading of the same gauge that nothing has superseded yet. */
  #checkTarget(row: NewReadingRow): void {
    if (row.supersedes === null) return
    const target = this.#target.get(row.network_key, row.supersedes) as { gauge_key: number } | undefined
    if (target?.gauge_key === row.gauge_key) return
    throw new LedgerError(
      'READING_UNKNOWN',
      `The reading ${row.id} corrects "${row.supersedes}", which is not a reading of the same gauge.`,
      'Look the reading up again.',
    )
  }

  #run(statement: Statement, row: NewReadingRow, version: number, supersedes: string | null): number {
    const { changes } = statement.run(
      row.network_key,
      row.gauge_key,
      row.last_day,
      row.first_day,
      row.id,
      row.amount_um,
      row.is_trace,
      row.starts_at_ms,
      row.ends_at_ms,
      row.received_at_ms,
      row.text,
      row.unit,
      row.remark,
      row.door,
      supersedes,
      row.confirmed,
      version,
    )
    return Number(changes)
  }
}
