/**
 * The files of photos in a folder beside the ledger, `ledger.db.photos/ab/abcdef….jpg`, each named by its content. A file
 * is on the disk under its name before anything speaks of it, and is written once.
 */
import { existsSync } from 'node:fs'
import { mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { photoHash } from './photoHash.ts'

export function photoFolderOf(ledgerPath: string): string {
  return `${ledgerPath}.photos`
}

export function photoPath(folder: string, sha256: string): string {
  return join(folder, sha256.slice(0, 2), `${sha256}.jpg`)
}

/** Forced to the disk when it resolves. What is there already, and whole, is left as it is. */
export async function writePhotoFile(folder: string, jpeg: Uint8Array): Promise<string> {
  const sha256 = photoHash(jpeg)
  const path = photoPath(folder, sha256)
  if ((await readPhotoFile(folder, sha256)) !== null) return sha256
  const home = join(folder, sha256.slice(0, 2))
  // For the eyes of the desk's own account alone.
  await mkdir(home, { recursive: true, mode: 0o700 })
  const part = `${path}.${process.pid}-${Math.random().toString(36).slice(2)}.part`
  const file = await open(part, 'wx', 0o600)
  try {
    await file.writeFile(jpeg)
    await file.sync()
  } finally {
    await file.close()
  }
  await rename(part, path)
  await syncFolder(home)
  return sha256
}

/** Null where it is not there or not what its name says. */
export async function readPhotoFile(folder: string, sha256: string): Promise<Uint8Array | null> {
  const jpeg = await readFile(photoPath(folder, sha256)).catch(() => null)
  return jpeg === null || photoHash(jpeg) !== sha256 ? null : jpeg
}

export async function removePhotoFile(folder: string, sha256: string): Promise<void> {
  await rm(photoPath(folder, sha256), { force: true })
}

/** Names of all photos in a folder; none where there is no folder. */
export async function photosInFolder(folder: string): Promise<string[]> {
  if (!existsSync(folder)) return []
  const names = await readdir(folder, { recursive: true })
  return names.flatMap((name) => /([0-9a-f]{64})\.jpg$/.exec(name)?.[1] ?? []).sort()
}

/** A new name in a folder lasts once the folder itself is on the disk. Not every system can be asked for that. */
async function syncFolder(path: string): Promise<void> {
  try {
    const folder = await open(path, 'r')
    await folder.sync().finally(() => folder.close())
  } catch {
    // Windows opens no folders.
  }
}
