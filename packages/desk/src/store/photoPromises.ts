/** What every store of photos promises. Each adapter runs the same suite. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { NewPhoto, PhotoQuota, Photos } from '../ports/photos.ts'

export interface OpenPhotos {
  photos: Photos
  /** Closes and opens again: what was acknowledged is there. Absent where nothing outlives the process. */
  reopen?: () => Promise<Photos>
  dispose: () => Promise<void>
}

const quota: PhotoQuota = { bytes: 1000, perReport: 3 }

function photo(reportId: string, content: string, changes: Partial<NewPhoto> = {}): NewPhoto {
  return {
    networkId: 'north',
    reportId,
    jpeg: new TextEncoder().encode(content),
    widthPx: 640,
    heightPx: 481,
    receivedAtUtc: '2026-06-01T15:04:05.678Z',
    by: 'A. Observer',
    ...changes,
  }
}

async function refusal(promise: Promise<unknown>): Promise<string> {
  try {
    await promise
  } catch (error) {
    return (error as { problem?: { code: string } }).problem?.code ?? String(error)
  }
  return 'not refused'
}

/** @param open a store with the networks `north` and `south` */
export function photoPromises(name: string, open: (quota: PhotoQuota) => Promise<OpenPhotos>): void {
  describe(`the ${name} store of photos`, () => {
    let opened: OpenPhotos
    let photos: Photos
    beforeEach(async () => {
      opened = await open(quota)
      photos = opened.photos
    })
    afterEach(() => opened.dispose())

    it('gives a photo back byte for byte under the SHA-256 of its content', async () => {
      const kept = await photos.add(photo('r1', 'abc'))
      // FIPS 180-4, example of SHA-256 for "abc".
      expect(kept.sha256).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
      expect(kept).toMatchObject({ bytes: 3, widthPx: 640, heightPx: 481, by: 'A. Observer', reportId: 'r1' })
      const read = await photos.read('north', kept.sha256)
      expect(read?.photo).toEqual(kept)
      expect(new TextDecoder().decode(read?.jpeg)).toBe('abc')
    })

    it('keeps the photos of a report in the order in which they came', async () => {
      for (const content of ['zz', 'a', 'mmm']) await photos.add(photo('r1', content))
      await photos.add(photo('r2', 'other'))
      expect((await photos.ofReport('north', 'r1')).map(({ bytes }) => bytes)).toEqual([2, 1, 3])
      expect(await photos.ofReport('north', 'nothing')).toEqual([])
    })

    it('keeps one photo sent twice for a report once, as it first came', async () => {
      const first = await photos.add(photo('r1', 'same'))
      const again = await photos.add(photo('r1', 'same', { receivedAtUtc: '2026-06-02T00:00:00Z', by: 'Other' }))
      expect(again).toEqual(first)
      expect(await photos.ofReport('north', 'r1')).toEqual([first])
    })

    it('keeps one photo sent twice at the same time once', async () => {
      await Promise.all(Array.from({ length: 8 }, () => photos.add(photo('r1', 'at once'))))
      expect(await photos.ofReport('north', 'r1')).toHaveLength(1)
    })

    it('counts a file that two reports show once', async () => {
      await photos.add(photo('r1', '12345'))
      await photos.add(photo('r2', '12345'))
      await photos.add(photo('r2', '678'))
      expect(await photos.usedBytes()).toBe(8)
    })

    it('refuses more than its room, and then has changed nothing', async () => {
      await photos.add(photo('r1', 'x'.repeat(900)))
      expect(await refusal(photos.add(photo('r2', 'y'.repeat(101))))).toBe('PHOTO_STORE_FULL')
      expect(await photos.ofReport('north', 'r2')).toEqual([])
      expect(await photos.usedBytes()).toBe(900)
      expect((await photos.add(photo('r2', 'z'.repeat(100)))).bytes).toBe(100)
      // A file that is there already needs no room.
      expect((await photos.add(photo('r3', 'x'.repeat(900)))).bytes).toBe(900)
    })

    it('refuses more photos for a report than are taken', async () => {
      for (const content of ['1', '2', '3']) await photos.add(photo('r1', content))
      expect(await refusal(photos.add(photo('r1', '4')))).toBe('PHOTOS_TOO_MANY')
      expect((await photos.add(photo('r1', '2'))).reportId).toBe('r1')
    })

    it('shows a photo to its own network alone', async () => {
      const { sha256 } = await photos.add(photo('r1', 'north only'))
      expect(await photos.read('south', sha256)).toBeNull()
      expect(await photos.ofReport('south', 'r1')).toEqual([])
      expect(await photos.read('north', 'f'.repeat(64))).toBeNull()
    })

    it('erases the photos of a report, and each file that no other report shows', async () => {
      const shared = await photos.add(photo('r1', 'shared'))
      const own = await photos.add(photo('r1', 'own'))
      await photos.add(photo('r2', 'shared'))
      expect(await photos.erase('north', 'r1')).toBe(2)
      expect(await photos.ofReport('north', 'r1')).toEqual([])
      expect(await photos.read('north', own.sha256)).toBeNull()
      expect((await photos.read('north', shared.sha256))?.photo.reportId).toBe('r2')
      expect(await photos.usedBytes()).toBe(6)
    })

    it('has what it acknowledged when it is opened again', async () => {
      const kept = await photos.add(photo('r1', 'lasting'))
      const again = opened.reopen === undefined ? photos : await opened.reopen()
      expect(await again.ofReport('north', 'r1')).toEqual([kept])
      expect((await again.read('north', kept.sha256))?.jpeg.length).toBe(7)
    })
  })
}
