/** The photos that a ledger file speaks of, when the ledger is copied, put back or examined. */
import { existsSync } from 'node:fs'
import { rename } from 'node:fs/promises'
import { photoFolderOf, readPhotoFile, writePhotoFile } from '../photoFiles.ts'
import type { Database } from './openDatabase.ts'

/** Names of the photos in a ledger; none in one from before there were photos. */
export function photosNamedIn(database: Database): string[] {
  if (database.prepare(`select 1 from sqlite_schema where name = 'photo'`).all().length === 0) return []
  const rows = database.prepare('select distinct sha256 from photo order by sha256').all() as { sha256: string }[]
  return rows.map(({ sha256 }) => sha256)
}

/** Copies files by their content: what is there already stays. @returns the copied ones, and those that are lost or damaged */
export async function copyPhotos(
  fromLedger: string,
  toLedger: string,
  names: readonly string[],
): Promise<{ copied: number; lost: string[] }> {
  const lost: string[] = []
  for (const sha256 of names) {
    const jpeg = await readPhotoFile(photoFolderOf(fromLedger), sha256)
    if (jpeg === null) lost.push(sha256)
    else await writePhotoFile(photoFolderOf(toLedger), jpeg)
  }
  return { copied: names.length - lost.length, lost }
}

/** Photos go with the ledger when it is moved. */
export async function movePhotos(fromLedger: string, toLedger: string): Promise<void> {
  if (existsSync(photoFolderOf(fromLedger))) await rename(photoFolderOf(fromLedger), photoFolderOf(toLedger))
}

/** Those named in a ledger whose file is not there, or not what it was. */
export async function lostPhotos(ledger: string, names: readonly string[]): Promise<string[]> {
  const lost: string[] = []
  for (const sha256 of names) if ((await readPhotoFile(photoFolderOf(ledger), sha256)) === null) lost.push(sha256)
  return lost
}
