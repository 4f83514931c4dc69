/** The quota of the photo store, and how it refuses. */
import { LedgerError } from '../ports/ledgerError.ts'
import type { PhotoQuota } from '../ports/photos.ts'

export interface PhotoRoom {
  /** Photos that the report has already. */
  ofReport: number
  usedBytes: number
  /** What the new file adds: 0 where the file is there already. */
  addedBytes: number
}

/** @throws {LedgerError} PHOTOS_TOO_MANY, PHOTO_STORE_FULL */
export function checkPhotoRoom(quota: PhotoQuota, room: PhotoRoom): void {
  if (room.ofReport >= quota.perReport) {
    throw new LedgerError(
      'PHOTOS_TOO_MANY',
      `The report has ${room.ofReport} photos already.`,
      `Send the ${quota.perReport} that show most.`,
    )
  }
  if (room.usedBytes + room.addedBytes > quota.bytes) {
    throw new LedgerError(
      'PHOTO_STORE_FULL',
      `The photos of this desk take ${Math.round(room.usedBytes / 1024 ** 2)} MB, of ${Math.round(quota.bytes / 1024 ** 2)} MB.`,
      'The report itself counts without a photo. The coordinator can make room.',
    )
  }
}

export function photoFileGone(sha256: string): LedgerError {
  return new LedgerError(
    'PHOTO_FILE_GONE',
    `The file of the photo ${sha256.slice(0, 12)}… is lost or is not what it was.`,
    'Bring it back from a backup of the folder of photos.',
  )
}
