import type { NewPhoto, PhotoQuota, Photos, StoredPhoto } from '../../ports/photos.ts'
import { usualPhotoQuota } from '../../ports/photos.ts'
import { storedPhotoOf } from '../photoHash.ts'
import { checkPhotoRoom } from '../photoTrouble.ts'

/** Photos for as long as the process lives. */
class MemoryPhotos implements Photos {
  readonly #quota: PhotoQuota
  readonly #photos: StoredPhoto[] = []
  readonly #files = new Map<string, Uint8Array>()

  constructor(quota: PhotoQuota) {
    this.#quota = quota
  }

  async add(photo: NewPhoto): Promise<StoredPhoto> {
    const stored = storedPhotoOf(photo)
    const before = this.#of(photo.networkId, photo.reportId)
    const same = before.find(({ sha256 }) => sha256 === stored.sha256)
    if (same !== undefined) return { ...same }
    const addedBytes = this.#files.has(stored.sha256) ? 0 : stored.bytes
    checkPhotoRoom(this.#quota, { ofReport: before.length, usedBytes: this.#used(), addedBytes })
    this.#files.set(stored.sha256, Uint8Array.from(photo.jpeg))
    this.#photos.push(stored)
    return { ...stored }
  }

  async ofReport(networkId: string, reportId: string): Promise<StoredPhoto[]> {
    return structuredClone(this.#of(networkId, reportId))
  }

  async read(networkId: string, sha256: string): Promise<{ photo: StoredPhoto; jpeg: Uint8Array } | null> {
    const photo = this.#photos.find((one) => one.networkId === networkId && one.sha256 === sha256)
    const jpeg = this.#files.get(sha256)
    return photo === undefined || jpeg === undefined ? null : { photo: { ...photo }, jpeg: Uint8Array.from(jpeg) }
  }

  async usedBytes(): Promise<number> {
    return this.#used()
  }

  async erase(networkId: string, reportId: string): Promise<number> {
    const gone = this.#of(networkId, reportId)
    for (const photo of gone) this.#photos.splice(this.#photos.indexOf(photo), 1)
    for (const { sha256 } of gone) {
      if (!this.#photos.some((one) => one.sha256 === sha256)) this.#files.delete(sha256)
    }
    return gone.length
  }

  #used(): number {
    return [...this.#files.values()].reduce((sum, { length }) => sum + length, 0)
  }

  #of(networkId: string, reportId: string): StoredPhoto[] {
    return this.#photos.filter((one) => one.networkId === networkId && one.reportId === reportId)
  }
}

export function openMemoryPhotos(quota: PhotoQuota = usualPhotoQuota): Photos {
  return new MemoryPhotos(quota)
}
