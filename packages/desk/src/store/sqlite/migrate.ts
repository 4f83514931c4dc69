/** Brings a ledger file up to date before anything else is done with it, or says why it will not be touched. */
import { LedgerError } from '../../ports/ledgerError.ts'
import { type Migration, migrations } from './migrations.ts'
import type { Database } from './openDatabase.ts'

/** "GWlg": marks the file as one of ours (SQLite's application_id). */
export const APPLICATION_ID = 0x47576c67

/** @throws {LedgerError} LEDGER_NOT_OURS, LEDGER_NEWER */
export function migrate(database: Database, path: string, steps: readonly Migration[] = migrations): void {
  const latest = steps.at(-1)?.number ?? 0
  const seen = versionOf(database, path, latest)
  if (seen === latest) return
  // Another process may be opening the same new file: whoever gets the lock does the work, the other finds it done.
  database.exec('begin immediate')
  try {
    const current = versionOf(database, path, latest)
    for (const step of steps) {
      if (step.number <= current) continue
      database.exec(step.sql)
      database.exec(`pragma user_version = ${step.number}`)
    }
    database.exec(`pragma application_id = ${APPLICATION_ID}`)
    database.exec('commit')
  } catch (error) {
    database.exec('rollback')
    throw error
  }
}

function versionOf(database: Database, path: string, latest: number): number {
  const applicationId = pragma(database, 'application_id')
  const version = pragma(database, 'user_version')
  if (applicationId !== APPLICATION_ID) {
    const { count } = database.prepare('select count(*) as count from sqlite_schema').get() as { count: number }
    if (applicationId !== 0 || version !== 0 || count > 0) {
      throw new LedgerError(
        'LEDGER_NOT_OURS',
        `"${path}" is an SQLite file, but not a Gaugewright ledger.`,
        'Name another file with --db.',
      )
    }
  }
  if (version > latest) {
    throw new LedgerError(
      'LEDGER_NEWER',
      `"${path}" was written by a newer Gaugewright (ledger version ${version}; this one knows up to ${latest}).`,
      'Use the newer Gaugewright, or a backup from before it was updated.',
    )
  }
  return version
}

function pragma(database: Database, name: 'application_id' | 'user_version'): number {
  return (database.prepare(`pragma ${name}`).get() as Record<string, number>)[name] ?? 0
}
