import { existsSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { smallNetwork } from '../../../test/support/smallNetwork.ts'
import { tempFiles } from '../../../test/support/tempFiles.ts'
import type { LedgerError } from '../../ports/ledgerError.ts'
import { usualPhotoQuota } from '../../ports/photos.ts'
import { photoFolderOf, photoPath } from '../photoFiles.ts'
import { photoPromises } from '../photoPromises.ts'
import { SqlLedger } from '../sql/sqlLedger.ts'
import { openSqliteStore } from './openSqliteStore.ts'
import { sqlitePhotos } from './sqlitePhotos.ts'

const { network } = smallNetwork(1)
const files = tempFiles()

async function openAt(path: string, quota = usualPhotoQuota) {
  const store = await openSqliteStore(path)
  const ledger = new SqlLedger(store, (error) => error)
  await ledger.saveNetwork({ ...network, id: 'north' })
  await ledger.saveNetwork({ ...network, id: 'south' })
  return { ledger, photos: sqlitePhotos(store, path, quota) }
}

photoPromises('SQLite', async (quota) => {
  const folder = await mkdtemp(join(tmpdir(), 'gaugewright-photos-'))
  const path = join(folder, 'ledger.db')
  let opened = await openAt(path, quota)
  return {
    photos: opened.photos,
    reopen: async () => {
      await opened.ledger.close()
      opened = await openAt(path, quota)
      return opened.photos
    },
    dispose: async () => {
      await opened.ledger.close()
      await rm(folder, { recursive: true })
    },
  }
})

const photo = {
  networkId: 'north',
  reportId: 'r',
  jpeg: new TextEncoder().encode('a storm'),
  widthPx: 3,
  heightPx: 2,
  receivedAtUtc: '2026-06-01T15:04:05Z',
  by: 'A',
}

it('keeps each file for its own account alone, beside the ledger, and leaves no half-written one', async () => {
  const path = join(files.folder, 'modes.db')
  const { ledger, photos } = await openAt(path)
  const { sha256 } = await photos.add(photo)
  const file = photoPath(photoFolderOf(path), sha256)
  expect(statSync(file).mode & 0o077).toBe(0)
  expect(readdirSync(join(photoFolderOf(path), sha256.slice(0, 2)))).toEqual([`${sha256}.jpg`])
  await photos.erase('north', 'r')
  expect(existsSync(file)).toBe(false)
  await ledger.close()
})

it('says that a photo is gone where its file was changed, and mends it when it is sent again', async () => {
  const path = join(files.folder, 'changed.db')
  const { ledger, photos } = await openAt(path)
  const { sha256 } = await photos.add(photo)
  writeFileSync(photoPath(photoFolderOf(path), sha256), 'another storm')
  const code = await photos.read('north', sha256).catch((error: LedgerError) => error.problem.code)
  expect(code).toBe('PHOTO_FILE_GONE')
  await photos.add(photo)
  expect((await photos.read('north', sha256))?.jpeg.length).toBe(photo.jpeg.length)
  await ledger.close()
})
it('refuses a photo for a network that the ledger does not have', async () => {
  const { ledger, photos } = await openAt(join(files.folder, 'unknown.db'))
  const code = await photos.add({ ...photo, networkId: 'west' }).catch((error: LedgerError) => error.problem.code)
  expect(code).toBe('NETWORK_UNKNOWN')
  await ledger.close()
})
