/**
 * The one place that knows which SQLite is under us: `node:sqlite` where Node has it whole (22.16 and later), else the same
 * interface from @photostructure/sqlite. Settings here are what the promise of durability rests on: see
 * docs/decisions/0002-ledger-survives-a-kill.md.
 */
import { createRequire } from 'node:module'
import type { SqliteDatabase as KyselyDatabase } from 'kysely'

export interface Statement {
  run(...values: unknown[]): { changes: number | bigint }
  get(...values: unknown[]): unknown
  all(...values: unknown[]): unknown[]
  iterate(...values: unknown[]): IterableIterator<unknown>
  columns(): unknown[]
}

export interface Database {
  exec(sql: string): void
  prepare(sql: string): Statement
  close(): void
}

const require = createRequire(import.meta.url)

interface SqliteModule {
  DatabaseSync: new (path: string) => Database
  StatementSync: { prototype: Statement }
}

function sqliteModule(): SqliteModule {
  const { emitWarning } = process
  process.emitWarning = () => {} // "SQLite is an experimental feature": said once per start, on the user's terminal
  try {
    const own = require('node:sqlite') as SqliteModule
    if ('columns' in own.StatementSync.prototype) return own
  } catch {
    // Node 20 has none.
  } finally {
    process.emitWarning = emitWarning
  }
  return require('@photostructure/sqlite') as SqliteModule
}

const WAIT_MS = 10_000

/** Settings that hold for one connection; `journal_mode` also stays with the file. */
export const connectionSettings = `
  pragma busy_timeout = ${WAIT_MS};
  pragma foreign_keys = on;
  pragma recursive_triggers = on;
  pragma journal_mode = wal;
  pragma synchronous = full;
  pragma fullfsync = on;
  pragma checkpoint_fullfsync = on;
  pragma journal_size_limit = 67108864;
  pragma temp_store = memory;
  pragma cache_size = -16384;
`

/** A connection with nothing set yet, so that a file that is not ours is looked at before anything is written to it. */
export function openDatabase(path: string): Database {
  const { DatabaseSync } = sqliteModule()
  return new DatabaseSync(path)
}

/** So many different texts are kept ready; the desk asks a few hundred, but lists of values make more. */
const STATEMENTS_KEPT = 300

/**
 * The connection in the form that Kysely's SqliteDialect asks for. Statements are kept, since making one ready costs more
 * than most of them take; one that is read row by row is made anew, since it may stand open while it is asked again.
 */
export function kyselyDatabase(database: Database): KyselyDatabase {
  const kept = new Map<string, { statement: Statement; reader: boolean }>()
  const ready = (sql: string): { statement: Statement; reader: boolean } => {
    const before = kept.get(sql)
    if (before !== undefined) return before
    const statement = database.prepare(sql)
    const made = { statement, reader: statement.columns().length > 0 }
    for (const oldest of kept.keys()) {
      if (kept.size < STATEMENTS_KEPT) break
      kept.delete(oldest)
    }
    kept.set(sql, made)
    return made
  }
  return {
    close: () => kept.clear(),
    prepare(sql) {
      const { statement, reader } = ready(sql)
      return {
        reader,
        all: (values) => statement.all(...values),
        run: (values) => statement.run(...values) as { changes: number | bigint; lastInsertRowid: number | bigint },
        iterate: (values) => database.prepare(sql).iterate(...values),
      }
    },
  }
}
