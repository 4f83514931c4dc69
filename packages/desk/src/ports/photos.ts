/**
 * Photos of urgent reports: what is known of each, and the files themselves, named by their content. Every adapter passes
 * the same promises (store/photoPromises.ts). A photo is never changed; it goes only when a person's data are erased.
 */
export interface StoredPhoto {
  networkId: string
  /** The urgent report that it goes with, by the id that the phone gave it. */
  reportId: string
  /** SHA-256 of the file, 64 hexadecimal digits. */
  sha256: string
  bytes: number
  widthPx: number
  heightPx: number
  receivedAtUtc: string
  /** Who sent it. */
  by: string
}

/** A JPEG that holds pixels and nothing else. */
export interface CleanPhoto {
  jpeg: Uint8Array
  widthPx: number
  heightPx: number
}

export type NewPhoto = Omit<StoredPhoto, 'sha256' | 'bytes'> & { jpeg: Uint8Array }

export interface PhotoQuota {
  /** Of all files of the store. */
  bytes: number
  perReport: number
}

export const usualPhotoQuota: PhotoQuota = { bytes: 2 * 1024 ** 3, perReport: 6 }

/** Every method rejects with a LedgerError, and then nothing has changed. */
export interface Photos {
  /**
   * Durable when it resolves. The same file for the same report again answers with what is there.
   * @throws {LedgerError} PHOTO_STORE_FULL, PHOTOS_TOO_MANY, NETWORK_UNKNOWN
   */
  add(photo: NewPhoto): Promise<StoredPhoto>
  /** In the order in which they came. */
  ofReport(networkId: string, reportId: string): Promise<StoredPhoto[]>
  /** Null where there is no such photo in the network. @throws {LedgerError} PHOTO_FILE_GONE where the file is lost or not what it was */
  read(networkId: string, sha256: string): Promise<{ photo: StoredPhoto; jpeg: Uint8Array } | null>
  /** Of all files, each counted once. */
  usedBytes(): Promise<number>
  /** Erases the photos of a report, and each file that no other report shows. @returns photos erased */
  erase(networkId: string, reportId: string): Promise<number>
}

/**
 * Draws an image anew as a JPEG without any of what came beside its pixels: no position, device, time, comment, thumbnail
 * or colour profile. Null where the bytes are no JPEG, PNG or WebP that can be opened within the limits.
 */
export type RedrawPhoto = (image: Uint8Array) => Promise<CleanPhoto | null>
