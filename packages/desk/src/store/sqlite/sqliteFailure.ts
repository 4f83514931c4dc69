/** What SQLite reports, as something that a person can act on. What is not known here is passed on as it is. */
import { LedgerError } from '../../ports/ledgerError.ts'

export function sqliteFailure(error: unknown, path: string): unknown {
  if (error instanceof LedgerError || !(error instanceof Error)) return error
  const { message } = error
  const code = (error as { errcode?: number }).errcode ?? 0
  const table = /UNIQUE constraint failed: (reading|decision)\.network_key, \1\.id$/.exec(message)?.[1]
  if (table !== undefined) {
    return new LedgerError('ID_TAKEN', `The ${table} has an id that another ${table} has.`, 'Give each a fresh id.')
  }
  if (/UNIQUE constraint failed: reading\.network_key, reading\.supersedes/.test(message)) {
    return new LedgerError(
      'ALREADY_SUPERSEDED',
      'The reading that is to be corrected has been corrected already.',
      'Look the reading up again and correct the newest one.',
    )
  }
  switch (code & 0xff) {
    case 5: // SQLITE_BUSY
    case 6: // SQLITE_LOCKED
      return new LedgerError(
        'LEDGER_BUSY',
        `"${path}" is being written to by another program.`,
        'Try again in a moment.',
      )
    case 8: // SQLITE_READONLY
    case 13: // SQLITE_FULL
    case 10: // SQLITE_IOERR
    case 14: // SQLITE_CANTOPEN
      return new LedgerError(
        'LEDGER_CANNOT_WRITE',
        `"${path}" cannot be opened or written (${message}).`,
        'Check the folder, its permissions and the space on the disk.',
      )
    case 11: // SQLITE_CORRUPT
      return new LedgerError('LEDGER_DAMAGED', `"${path}" is damaged (${message}).`, 'Restore the last backup.')
    case 26: // SQLITE_NOTADB
      return new LedgerError(
        'LEDGER_NOT_OURS',
        `"${path}" is not a Gaugewright ledger.`,
        'Name another file with --db.',
      )
    default:
      return error
  }
}
