/**
 * Ledger files as files. A backup is made by SQLite's own VACUUM INTO, which reads one consistent state while others
 * write, and counts as made only when it was checked and lies under its final name. Photos go with it, into a folder beside it:
 * they are on the disk before the ledger speaks of them, so that a copy made first never names one that is not there yet.
 */
import { existsSync } from 'node:fs'
import { open, rename, rm, stat } from 'node:fs/promises'
import { LedgerError } from '../../ports/ledgerError.ts'
import type { LedgerExamination, LedgerFiles } from '../../ports/ledgerFiles.ts'
import { photoFolderOf } from '../photoFiles.ts'
import { APPLICATION_ID } from './migrate.ts'
import { migrations } from './migrations.ts'
import { type Database, openDatabase } from './openDatabase.ts'
import { copyPhotos, lostPhotos, movePhotos, photosNamedIn } from './photoCopies.ts'
import { sqliteFailure } from './sqliteFailure.ts'

const TABLES = ['network', 'gauge', 'reading', 'decision', 'absence', 'map_layer'] as const
const WAIT_MS = 5000

export const sqliteLedgerFiles: LedgerFiles = {
  async backup(path, to) {
    if (existsSync(to)) throw exists(to, 'Give a name that is not taken yet.')
    const photos = await copyWhole(path, to)
    return { bytes: (await stat(to)).size, photos: photos.copied, photosLost: photos.lost.length }
  },

  async restore(from, path, { replace }) {
    await copyable(from)
    if (!existsSync(path)) {
      await copyWhole(from, path)
      return { keptAs: null }
    }
    if (!replace) throw exists(path, 'Add --replace: what is there is then kept beside it under another name.')
    const beside = `${path}.restoring`
    await rm(beside, { force: true })
    await rm(photoFolderOf(beside), { recursive: true, force: true })
    await copyWhole(from, beside)
    closeLastOut(path)
    const keptAs = await freeName(path)
    for (const suffix of ['-wal', '-shm', '']) {
      if (existsSync(path + suffix)) await rename(path + suffix, keptAs + suffix)
    }
    await movePhotos(path, keptAs)
    await movePhotos(beside, path)
    await rename(beside, path)
    return { keptAs }
  },

  async examine(path) {
    return withFile(path, async (database) => {
      const integrity = integrityOf(database)
      const isWhole = integrity === 'ok'
      // In a damaged file not every table can be counted.
      const counts = TABLES.flatMap((name) => rowsOf(database, name, isWhole))
      const photos = isWhole ? photosNamedIn(database) : []
      counts.push({ name: 'photo', rows: photos.length })
      const examination: LedgerExamination = {
        path,
        bytes: (await stat(path)).size,
        integrity,
        schemaVersion: number(database, 'select user_version as n from pragma_user_version'),
        counts,
        photosLost: await lostPhotos(path, photos),
      }
      return examination
    })
  },
}

/** The copy is written beside its place, checked, forced to the disk and moved, its photos before it. */
async function copyWhole(path: string, to: string): Promise<{ copied: number; lost: string[] }> {
  const part = `${to}.part`
  await rm(part, { force: true })
  try {
    await withFile(path, async (database) => {
      database.prepare('vacuum into ?').run(part)
    })
    await copyable(part)
    const file = await open(part, 'r+')
    await file.sync()
    await file.close()
    const photos = await copyPhotos(path, to, await withFile(part, async (database) => photosNamedIn(database)))
    await rename(part, to)
    return photos
  } catch (error) {
    await rm(part, { force: true })
    throw sqliteFailure(error, to)
  }
}

/** @throws {LedgerError} where the file is no ledger of ours, of a newer make, or damaged */
async function copyable(path: string): Promise<void> {
  const integrity = await withFile(path, async (database) => integrityOf(database))
  if (integrity === 'ok') return
  throw new LedgerError('LEDGER_DAMAGED', `"${path}" is damaged (${integrity}).`, 'Take another backup.')
}

async function withFile<T>(path: string, work: (database: Database) => Promise<T>): Promise<T> {
  if (!existsSync(path)) throw new LedgerError('LEDGER_NOT_FOUND', `There is no ledger "${path}".`, 'Check the name.')
  let database: Database | null = null
  try {
    database = openDatabase(path)
    database.exec(`pragma busy_timeout = ${WAIT_MS}`)
    if (number(database, 'select application_id as n from pragma_application_id') !== APPLICATION_ID) {
      throw new LedgerError('LEDGER_NOT_OURS', `"${path}" is not a Gaugewright ledger.`, 'Name another file.')
    }
    const latest = migrations.at(-1)?.number ?? 0
    if (number(database, 'select user_version as n from pragma_user_version') > latest) {
      throw new LedgerError(
        'LEDGER_NEWER',
        `"${path}" was written by a newer Gaugewright.`,
        'Use the newer Gaugewright.',
      )
    }
    return await work(database)
  } catch (error) {
    throw sqliteFailure(error, path)
  } finally {
    database?.close()
  }
}

/** Fails while another program has the ledger open; a file too damaged to ask is nobody's. */
function closeLastOut(path: string): void {
  let database: Database | null = null
  try {
    database = openDatabase(path)
    database.exec('pragma busy_timeout = 0; pragma journal_mode = delete')
  } catch (error) {
    const failure = sqliteFailure(error, path)
    if (failure instanceof LedgerError && failure.problem.code === 'LEDGER_BUSY') {
      throw new LedgerError('LEDGER_BUSY', `"${path}" is open in a desk.`, 'Close the desk first.')
    }
  } finally {
    database?.close()
  }
}

async function freeName(path: string): Promise<string> {
  for (let number = 1; ; number++) if (!existsSync(`${path}.before-${number}`)) return `${path}.before-${number}`
}

/** Damage may keep SQLite from even looking: what it then says is the fault. */
function integrityOf(database: Database): string {
  try {
    const rows = database.prepare('pragma integrity_check(20)').all() as { integrity_check: string }[]
    const words = rows.map((row) => row.integrity_check)
    const isWhole = words.length === 1 && words[0] === 'ok'
    if (!isWhole) return words.filter((word) => word !== 'ok').join('; ')
    const broken = database.prepare('pragma foreign_key_check').all().length
    return broken === 0 ? 'ok' : `${broken} rows point at nothing`
  } catch (error) {
    return (error as Error).message
  }
}

function rowsOf(database: Database, name: string, isWhole: boolean): { name: string; rows: number }[] {
  try {
    return [{ name, rows: number(database, `select count(*) as n from ${name}`) }]
  } catch (error) {
    if (isWhole) throw error
    return []
  }
}

function number(database: Database, sql: string): number {
  return Number((database.prepare(sql).get() as { n: number }).n)
}

function exists(path: string, advice: string): LedgerError {
  return new LedgerError('LEDGER_EXISTS', `"${path}" is there already.`, advice)
}
