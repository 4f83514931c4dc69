import { createHash } from 'node:crypto'
import type { NewPhoto, StoredPhoto } from '../ports/photos.ts'

/** Name of a photo: SHA-256 of its file, 64 hexadecimal digits. */
export function photoHash(jpeg: Uint8Array): string {
  return createHash('sha256').update(jpeg).digest('hex')
}

/** What is kept of a new photo beside its file. */
export function storedPhotoOf({ jpeg, ...rest }: NewPhoto): StoredPhoto {
  return { ...rest, sha256: photoHash(jpeg), bytes: jpeg.length }
}
