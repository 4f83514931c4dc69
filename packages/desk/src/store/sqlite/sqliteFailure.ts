/** What SQLite reports, as something that a person can act on. What is not known here is passed on as it is. */
import { LedgerError } from '../../ports/ledgerError.ts'
import { mailTaken } from '../unknown.ts'

export function sqliteFailure(error: unknown, path: string): unknown {
  if (error instanceof LedgerError || !(error instanceof Error)) return error
  const { message } = error
  const table = /UNIQUE constraint failed: (reading|decision|rule_setting)\.network_key, \1\.id$/.exec(message)?.[1]
  if (table !== undefined) {
    const what = table === 'rule_setting' ? 'setting' : table
    return new LedgerError('ID_TAKEN', `The ${what} has an id that another ${what} has.`, 'Give each a fresh id.')
  }
  if (/UNIQUE constraint failed: person\.mail/.test(message)) return mailTaken()
  if (/UNIQUE constraint failed: audit\.id/.test(message)) {
    return new LedgerError('ID_TAKEN', 'The entry has an id that another entry has.', 'Give each a fresh id.')
  }
  if (/UNIQUE constraint failed: reading\.network_key, reading\.supersedes/.test(message)) {
    return new LedgerError(
      'ALREADY_SUPERSEDED',
      'The reading that is to be corrected has been corrected already.',
      'Look the reading up again and correct the newest one.',
    )
  }
  if (isBusy(error)) {
    return new LedgerError('LEDGER_BUSY', `"${path}" is being written to by another program.`, 'Try again in a moment.')
  }
  switch (resultCode(error)) {
    case 8: // SQLITE_READONLY
    case 10: // SQLITE_IOERR
    case 13: // SQLITE_FULL
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

/** SQLITE_BUSY (5) or SQLITE_LOCKED (6). */
export function isBusy(error: unknown): boolean {
  const code = resultCode(error)
  return code === 5 || code === 6
}

/** SQLite's primary result code; 0 where the error is not SQLite's. */
function resultCode(error: unknown): number {
  return ((error as { errcode?: number }).errcode ?? 0) & 0xff
}
