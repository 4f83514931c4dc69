import { photoLimits } from '@gaugewright/contract'
import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { jpegSegments } from './jpegSegments.ts'
import { imageKind, redrawPhoto } from './redrawPhoto.ts'

/** A picture whose left half is red and right half blue, so that turning it shows. */
const twoHalves = (widthPx: number, heightPx: number) =>
  sharp({ create: { width: widthPx, height: heightPx, channels: 3, background: '#d01010' } }).composite([
    {
      input: {
        create: { width: Math.floor(widthPx / 2), height: heightPx, channels: 3, background: '#1010d0' },
      },
      left: Math.ceil(widthPx / 2),
      top: 0,
    },
  ])

/** With what a phone writes: maker, model, time and position; and turned by the Exif orientation. */
const fromPhone = () =>
  twoHalves(60, 40)
    .withExif({
      IFD0: { Make: 'Inventedphone', Model: 'IP-77', Copyright: 'A. Observer' },
      IFD2: { DateTimeOriginal: '2026:06:01 15:04:05', BodySerialNumber: 'SN-4711' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '47/1 11/1 3300/100',
        GPSLongitudeRef: 'E',
        GPSLongitude: '8/1 31/1 0/1',
      },
    })
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer()

const text = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1')

describe('redrawPhoto', () => {
  it('lets nothing through of what a phone wrote beside the pixels', async () => {
    const image = await fromPhone()
    // The picture put in does hold it, or the promise would be empty.
    for (const told of ['Inventedphone', 'SN-4711', 'Exif']) expect(text(image)).toContain(told)
    expect(jpegSegments(image)?.beside).toContain('APP1 Exif')
    const clean = await redrawPhoto(image)
    for (const told of ['Inventedphone', 'IP-77', 'SN-4711', 'A. Observer', 'Exif', '2026:06:01'])
      expect(text(clean!.jpeg)).not.toContain(told)
    const kept = await sharp(clean!.jpeg).metadata()
    expect([kept.exif, kept.icc, kept.iptc, kept.xmp, kept.orientation, kept.comments]).toEqual(
      Array(6).fill(undefined),
    )
    expect(jpegSegments(clean!.jpeg)).toEqual({ beside: [], bytesAfterEnd: 0 })
  })

  it('turns the picture as the phone said before it forgets it', async () => {
    const clean = await redrawPhoto(await fromPhone())
    expect([clean?.widthPx, clean?.heightPx]).toEqual([40, 60])
    // Orientation 6: to be turned clockwise by a quarter, so that red, on the left, comes on top.
    const { data, info } = await sharp(clean!.jpeg).raw().toBuffer({ resolveWithObject: true })
    const at = (x: number, y: number) => [...data.subarray((y * info.width + x) * 3, (y * info.width + x) * 3 + 3)]
    expect(at(20, 10)[0]).toBeGreaterThan(150)
    expect(at(20, 50)[2]).toBeGreaterThan(150)
  })

  it('drops what is hidden behind the end of a picture, in comments and in chunks of text', async () => {
    const jpeg = Buffer.concat([await twoHalves(30, 20).jpeg().toBuffer(), Buffer.from('a film of the garden')])
    expect(jpegSegments(jpeg)?.bytesAfterEnd).toBe(20)
    const comment = Buffer.from([0xff, 0xfe, 0, 8, ...Buffer.from('secret')])
    const withComment = Buffer.concat([jpeg.subarray(0, 2), comment, jpeg.subarray(2)])
    expect(jpegSegments(withComment)?.beside).toEqual(['COM'])
    const clean = await redrawPhoto(withComment)
    expect(text(clean!.jpeg)).not.toMatch(/garden|secret/)
    const png = await twoHalves(30, 20)
      .withXmp('<x:xmpmeta xmlns:x="adobe:ns:meta/">hidden</x:xmpmeta>')
      .png()
      .toBuffer()
    expect(text(png)).toContain('XML:com.adobe.xmp')
    expect(text((await redrawPhoto(png))!.jpeg)).not.toMatch(/hidden|adobe/)
  })

  it('takes JPEG, PNG and WebP, and gives JPEG', async () => {
    const picture = twoHalves(33, 21)
    for (const image of [
      await picture.jpeg().toBuffer(),
      await picture.png().toBuffer(),
      await picture.webp().toBuffer(),
    ]) {
      const clean = await redrawPhoto(image)
      expect([clean?.widthPx, clean?.heightPx, imageKind(clean!.jpeg)]).toEqual([33, 21, 'jpeg'])
    }
  })

  it('refuses what only calls itself a picture: pages, drawings with scripts, films, other kinds, broken ones', async () => {
    const picture = twoHalves(16, 16)
    for (const bytes of [
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
      Buffer.from('<!doctype html><script>alert(1)</script>'),
      Buffer.from('GIF89a'),
      await picture.gif().toBuffer(),
      await picture.tiff().toBuffer(),
      Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 4]),
      (await picture.jpeg().toBuffer()).subarray(0, 200),
      Buffer.alloc(0),
    ])
      expect(await redrawPhoto(bytes)).toBeNull()
  })

  it('makes large pictures smaller and refuses those that would fill the memory', async () => {
    const wide = await sharp({ create: { width: 4000, height: 1000, channels: 3, background: '#777' } })
      .jpeg()
      .toBuffer()
    const clean = await redrawPhoto(wide)
    expect([clean?.widthPx, clean?.heightPx]).toEqual([photoLimits.sidePx, photoLimits.sidePx / 4])
    const bomb = await sharp({ create: { width: 9000, height: 9000, channels: 3, background: '#777' } })
      .png()
      .toBuffer()
    expect(bomb.length).toBeLessThan(photoLimits.bytes)
    expect(await redrawPhoto(bomb)).toBeNull()
  })

  it('draws the same picture to the same bytes, so that what is sent twice has one name', async () => {
    const image = await fromPhone()
    expect(Buffer.compare((await redrawPhoto(image))!.jpeg, (await redrawPhoto(image))!.jpeg)).toBe(0)
  })
})
