/**
 * Several short transactions made durable by one commit: writing to the disk takes as long for one as for many. Each is a
 * savepoint of its own, so that one that fails leaves no trace and hinders no other. None is told of before all are durable.
 */
import type { Database } from './openDatabase.ts'

interface Waiting {
  resolve: () => void
  reject: (error: unknown) => void
}

/** With more than this the first of them would wait longer than the commit takes. */
const mostTogether = 100
const SAVEPOINT = 'one_of_many'

export class SharedCommit {
  readonly #writer: Database
  readonly #waiting: Waiting[] = []
  #isOpen = false
  #isMemberOpen = false
  #timer: NodeJS.Immediate | null = null

  constructor(writer: Database) {
    this.#writer = writer
  }

  /** Whether another may come in without waiting for the disk. */
  get hasRoom(): boolean {
    return this.#isOpen && this.#waiting.length < mostTogether
  }

  /** A transaction has begun; or one stands open and another member comes in. */
  enter(): void {
    this.#isOpen = true
    this.#writer.exec(`savepoint ${SAVEPOINT}`)
    this.#isMemberOpen = true
  }

  /**
   * The member that came in last is done. What arrives in the same turn of the event loop may still come in.
   * @returns resolves when all that is in the transaction is durable
   */
  leave(how: 'keep' | 'drop'): Promise<void> {
    this.#isMemberOpen = false
    try {
      this.#writer.exec(how === 'keep' ? `release ${SAVEPOINT}` : `rollback to ${SAVEPOINT}; release ${SAVEPOINT}`)
    } catch (error) {
      // SQLite has rolled all of it back by itself (disk full, input/output error).
      this.#end('rollback', error)
      return how === 'keep' ? Promise.reject(error) : Promise.resolve()
    }
    this.#timer ??= setImmediate(() => {
      this.#timer = null
      if (!this.#isMemberOpen) this.flush()
    })
    return new Promise((resolve, reject) => {
      this.#waiting.push({ resolve, reject: how === 'keep' ? reject : () => resolve() })
      if (this.#waiting.length >= mostTogether) this.flush()
    })
  }

  /** Make durable what is in the transaction, and tell those who wait for it. */
  flush(): void {
    if (this.#isOpen) this.#end('commit')
  }

  #end(how: 'commit' | 'rollback', failed?: unknown): void {
    if (this.#timer !== null) clearImmediate(this.#timer)
    this.#timer = null
    this.#isOpen = false
    const waiting = this.#waiting.splice(0)
    let error = failed
    try {
      this.#writer.exec(how)
    } catch (trouble) {
      error ??= trouble
      if (how === 'commit') this.#tryRollback()
    }
    for (const one of waiting) {
      if (error === undefined) one.resolve()
      else one.reject(error)
    }
  }

  /** A failed commit may leave the transaction open: nothing of it may be kept. */
  #tryRollback(): void {
    try {
      this.#writer.exec('rollback')
    } catch {
      // It was rolled back by SQLite itself.
    }
  }
}
