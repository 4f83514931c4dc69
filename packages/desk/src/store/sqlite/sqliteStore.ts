/**
 * A ledger file: one connection that reads and one that writes. In WAL mode the reader never waits for the writer and
 * sees whole transactions only. Writers in this process take turns; other processes are waited for by SQLite itself.
 */
import { Kysely, SqliteDialect } from 'kysely'
import type { Tables } from '../sql/tables.ts'
import type { Store, WriteTransaction } from '../sql/writeTransaction.ts'
import { connectionSettings, type Database, kyselyDatabase, openDatabase } from './openDatabase.ts'
import { SharedCommit } from './sharedCommit.ts'
import { isBusy, sqliteFailure } from './sqliteFailure.ts'
import { SqliteReadings } from './sqliteReadings.ts'

/** How long to wait for other programs that write, and how often to look. */
const PATIENCE_MS = 30_000
const PAUSE_MS = 50

export class SqliteStore implements Store {
  readonly db: Kysely<Tables>
  readonly #path: string
  readonly #reader: Database
  readonly #writer: Database
  readonly #writerDb: Kysely<Tables>
  #readings: SqliteReadings | null = null
  /** Resolves when the last transaction that was asked for has ended. */
  #turn: Promise<void> = Promise.resolve()
  #open: WriteTransaction | null = null
  readonly #shared: SharedCommit

  constructor(path: string, writer: Database) {
    this.#path = path
    this.#writer = writer
    this.#shared = new SharedCommit(writer)
    writer.exec('pragma busy_timeout = 0')
    this.#reader = openDatabase(path)
    this.#reader.exec(connectionSettings)
    this.db = kyselyOver(this.#reader)
    this.#writerDb = kyselyOver(writer)
  }

  async begin(how: 'alone' | 'together' = 'alone'): Promise<WriteTransaction> {
    const before = this.#turn
    let endTurn = (): void => {}
    this.#turn = new Promise((resolve) => {
      endTurn = resolve
    })
    await before
    try {
      if (how === 'alone' || !this.#shared.hasRoom) {
        this.#shared.flush()
        await this.#beginWhenFree()
      }
      if (how === 'together') this.#shared.enter()
    } catch (error) {
      endTurn()
      throw sqliteFailure(error, this.#path)
    }
    this.#open = this.#transaction(how, endTurn)
    return this.#open
  }

  async close(): Promise<void> {
    await this.#open?.rollback()
    await this.#turn
    this.#shared.flush()
    this.#reader.close()
    // The last connection folds the log into the file when it closes, but a driver may close only when its statements are
    // collected. Others that have the ledger open may keep it from folding now: then they do it.
    this.#writer.exec('pragma wal_checkpoint(truncate)')
    this.#writer.close()
  }

  /** Another program may be bringing in a large file: wait for it without holding up this one. */
  async #beginWhenFree(): Promise<void> {
    for (let waitedMs = 0; ; waitedMs += PAUSE_MS) {
      try {
        this.#writer.exec('begin immediate')
        return
      } catch (error) {
        if (!isBusy(error) || waitedMs >= PATIENCE_MS) throw error
        await new Promise((resume) => setTimeout(resume, PAUSE_MS))
      }
    }
  }

  #transaction(how: 'alone' | 'together', endTurn: () => void): WriteTransaction {
    const finish = async (sql: 'commit' | 'rollback'): Promise<void> => {
      if (this.#open !== transaction) return
      let ended: Promise<void> | undefined
      try {
        if (how === 'together') ended = this.#shared.leave(sql === 'commit' ? 'keep' : 'drop')
        else this.#writer.exec(sql)
      } catch (error) {
        // A failed commit may leave the transaction open: nothing of it may be kept.
        if (sql === 'commit') this.#tryRollback()
        throw sqliteFailure(error, this.#path)
      } finally {
        this.#open = null
        endTurn()
      }
      await ended?.catch((error: unknown) => {
        throw sqliteFailure(error, this.#path)
      })
    }
    const transaction: WriteTransaction = {
      db: this.#writerDb,
      appendReadings: async (rows) => {
        this.#readings ??= new SqliteReadings(this.#writer)
        try {
          return this.#readings.append(rows)
        } catch (error) {
          throw sqliteFailure(error, this.#path)
        }
      },
      commit: () => finish('commit'),
      rollback: () => finish('rollback'),
    }
    return transaction
  }

  #tryRollback(): void {
    try {
      this.#writer.exec('rollback')
    } catch {
      // SQLite has rolled back by itself (disk full, input/output error).
    }
  }
}

function kyselyOver(database: Database): Kysely<Tables> {
  return new Kysely<Tables>({ dialect: new SqliteDialect({ database: kyselyDatabase(database) }) })
}
