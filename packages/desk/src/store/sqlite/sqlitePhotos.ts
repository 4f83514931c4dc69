/** Photos of a ledger file: what is known of each in the ledger, the files in the folder beside it. */
import { formatInstant } from '@gaugewright/science'
import type { Kysely } from 'kysely'
import type { NewPhoto, PhotoQuota, Photos, StoredPhoto } from '../../ports/photos.ts'
import { usualPhotoQuota } from '../../ports/photos.ts'
import { instantMs } from '../instantMs.ts'
import { photoFolderOf, readPhotoFile, removePhotoFile, writePhotoFile } from '../photoFiles.ts'
import { storedPhotoOf } from '../photoHash.ts'
import { checkPhotoRoom, photoFileGone } from '../photoTrouble.ts'
import { GaugeIds } from '../sql/gaugeIds.ts'
import type { PhotoTable, Tables } from '../sql/tables.ts'
import type { Store } from '../sql/writeTransaction.ts'
import { unknownNetwork } from '../unknown.ts'
import { sqliteFailure } from './sqliteFailure.ts'

/** @param path of the ledger file that the store has open */
export function sqlitePhotos(store: Store, path: string, quota: PhotoQuota = usualPhotoQuota): Photos {
  const folder = photoFolderOf(path)
  const ids = new GaugeIds(store.db)

  async function write<T>(work: (db: Kysely<Tables>) => Promise<T>): Promise<T> {
    const transaction = await store.begin()
    try {
      const result = await work(transaction.db)
      await transaction.commit()
      return result
    } catch (error) {
      await transaction.rollback()
      throw sqliteFailure(error, path)
    }
  }

  async function ofReport(db: Kysely<Tables>, networkId: string, reportId: string): Promise<StoredPhoto[]> {
    const networkKey = await ids.networkKey(networkId)
    if (networkKey === null) return []
    const query = db.selectFrom('photo').selectAll().where('network_key', '=', networkKey)
    const rows = await query.where('report_id', '=', reportId).orderBy('sequence').execute()
    return rows.map((row) => fromRow(row, networkId))
  }

  return {
    async add(photo: NewPhoto) {
      const networkKey = await ids.networkKey(photo.networkId)
      if (networkKey === null) throw unknownNetwork(photo.networkId)
      const stored = storedPhotoOf(photo)
      // The file first: whatever the ledger speaks of is on the disk. A file that nothing speaks of does no harm.
      const [there] = await filesNamed(store.db, stored.sha256)
      const isKept = there !== undefined && (await readPhotoFile(folder, stored.sha256)) !== null
      if (!isKept) {
        const before = await ofReport(store.db, photo.networkId, photo.reportId)
        const room = { ofReport: before.length, usedBytes: await usedBytes(store.db), addedBytes: stored.bytes }
        if (there === undefined) checkPhotoRoom(quota, room)
        await writePhotoFile(folder, photo.jpeg)
      }
      const kept = await write(async (db) => {
        const before = await ofReport(db, photo.networkId, photo.reportId)
        const same = before.find(({ sha256 }) => sha256 === stored.sha256)
        if (same !== undefined) return same
        const isNew = (await filesNamed(db, stored.sha256)).length === 0
        const room = { usedBytes: await usedBytes(db), addedBytes: isNew ? stored.bytes : 0 }
        checkPhotoRoom(quota, { ofReport: before.length, ...room })
        await db
          .insertInto('photo')
          .values({
            network_key: networkKey,
            report_id: photo.reportId,
            sequence: before.length + 1,
            sha256: stored.sha256,
            bytes: stored.bytes,
            width_px: stored.widthPx,
            height_px: stored.heightPx,
            received_at_ms: instantMs(stored.receivedAtUtc),
            by_name: stored.by,
          })
          .execute()
        return stored
      })
      // Another report with the same file may have been erased meanwhile, and the file with it.
      await writePhotoFile(folder, photo.jpeg)
      return kept
    },

    ofReport: (networkId, reportId) => ofReport(store.db, networkId, reportId),

    async read(networkId, sha256) {
      const networkKey = await ids.networkKey(networkId)
      const row = (await filesNamed(store.db, sha256)).find((one) => one.network_key === networkKey)
      if (row === undefined) return null
      const jpeg = await readPhotoFile(folder, sha256)
      if (jpeg === null) throw photoFileGone(sha256)
      return { photo: fromRow(row, networkId), jpeg }
    },

    usedBytes: () => usedBytes(store.db),

    async erase(networkId, reportId) {
      const networkKey = await ids.networkKey(networkId)
      if (networkKey === null) return 0
      const { gone, lonely } = await write(async (db) => {
        const rows = await ofReport(db, networkId, reportId)
        await db.deleteFrom('photo').where('network_key', '=', networkKey).where('report_id', '=', reportId).execute()
        const names: string[] = []
        for (const { sha256 } of rows) if ((await filesNamed(db, sha256)).length === 0) names.push(sha256)
        return { gone: rows.length, lonely: names }
      })
      for (const sha256 of lonely) await removePhotoFile(folder, sha256)
      return gone
    },
  }
}

async function filesNamed(db: Kysely<Tables>, sha256: string): Promise<PhotoTable[]> {
  return await db.selectFrom('photo').selectAll().where('sha256', '=', sha256).execute()
}

async function usedBytes(db: Kysely<Tables>): Promise<number> {
  const files = db.selectFrom('photo').select(['sha256', 'bytes']).distinct().as('file')
  const row = await db
    .selectFrom(files)
    .select((eb) => eb.fn.sum('bytes').as('bytes'))
    .executeTakeFirst()
  return Number(row?.bytes ?? 0)
}

function fromRow(row: PhotoTable, networkId: string): StoredPhoto {
  return {
    networkId,
    reportId: row.report_id,
    sha256: row.sha256,
    bytes: row.bytes,
    widthPx: row.width_px,
    heightPx: row.height_px,
    receivedAtUtc: formatInstant(row.received_at_ms),
    by: row.by_name,
  }
}
