/** A real JPEG, drawn by the browser, with an Exif segment put in by hand: maker, serial number, focal length, a position. */
import type { Page } from 'playwright-core'

export async function jpegWithExif(
  page: Page,
  {
    widthPx = 320,
    heightPx = 240,
    equivalentMm = 26,
  }: { widthPx?: number; heightPx?: number; equivalentMm?: number } = {},
): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ([widthPx, heightPx]) => {
      const canvas = document.createElement('canvas')
      canvas.width = widthPx!
      canvas.height = heightPx!
      const context = canvas.getContext('2d')!
      for (let i = 0; i < 60; i++) {
        context.fillStyle = `hsl(${i * 6} 60% 60%)`
        context.fillRect((i * 53) % widthPx!, (i * 37) % heightPx!, 60, 40)
      }
      return canvas.toDataURL('image/jpeg', 0.9).split(',')[1]!
    },
    [widthPx, heightPx],
  )
  const jpeg = Buffer.from(base64, 'base64')
  return Buffer.concat([jpeg.subarray(0, 2), exifSegment(equivalentMm), jpeg.subarray(2)])
}

/** APP1 by Exif 2.32: a little-endian TIFF with Make, FocalLengthIn35mmFilm in the Exif directory, a latitude in the GPS one. */
function exifSegment(equivalentMm: number): Buffer {
  const make = Buffer.from('Inventedphone\0SN-4711\0')
  const entry = (tag: number, type: number, count: number, value: number): Buffer => {
    const bytes = Buffer.alloc(12)
    bytes.writeUInt16LE(tag, 0)
    bytes.writeUInt16LE(type, 2)
    bytes.writeUInt32LE(count, 4)
    bytes.writeUInt32LE(value, 8)
    return bytes
  }
  const directory = (entries: Buffer[]): Buffer => {
    const count = Buffer.alloc(2)
    count.writeUInt16LE(entries.length)
    return Buffer.concat([count, ...entries, Buffer.alloc(4)])
  }
  const exifAt = 8 + 2 + 3 * 12 + 4
  const gpsAt = exifAt + 2 + 12 + 4
  const makeAt = gpsAt + 2 + 2 * 12 + 4
  const latitudeAt = makeAt + make.length
  const latitude = Buffer.alloc(24)
  for (const [at, value] of [45, 1, 6, 1, 1234, 100].entries()) latitude.writeUInt32LE(value, at * 4)
  const tiff = Buffer.concat([
    Buffer.from([0x49, 0x49, 0x2a, 0, 8, 0, 0, 0]),
    directory([entry(0x010f, 2, make.length, makeAt), entry(0x8769, 4, 1, exifAt), entry(0x8825, 4, 1, gpsAt)]),
    directory([entry(0xa405, 3, 1, equivalentMm)]),
    directory([entry(1, 2, 2, 0x4e), entry(2, 5, 3, latitudeAt)]),
    make,
    latitude,
  ])
  const body = Buffer.concat([Buffer.from('Exif\0\0'), tiff])
  const head = Buffer.from([0xff, 0xe1, 0, 0])
  head.writeUInt16BE(body.length + 2, 2)
  return Buffer.concat([head, body])
}
