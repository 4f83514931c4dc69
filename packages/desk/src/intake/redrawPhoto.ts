/**
 * Images from phones, drawn anew: opened only if their first bytes name a kind that is taken, within limits of size, by the
 * readers of those kinds alone, and written as a JPEG of pixels.
 */
import { photoLimits } from '@gaugewright/contract'
import type { CleanPhoto } from '../ports/photos.ts'
import { jpegSegments } from './jpegSegments.ts'

const QUALITY = 82
const PATIENCE_S = 10
const readers = ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer']

/** The kind that the first bytes of a file name. Sources: [T81], [RFC2083] 12.11, [RFC9649] 2.4. */
export function imageKind(bytes: Uint8Array): 'jpeg' | 'png' | 'webp' | null {
  const startsWith = (from: number, ...expected: number[]) => expected.every((byte, i) => bytes[from + i] === byte)
  if (startsWith(0, 0xff, 0xd8, 0xff)) return 'jpeg'
  if (startsWith(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'png'
  if (startsWith(0, 0x52, 0x49, 0x46, 0x46) && startsWith(8, 0x57, 0x45, 0x42, 0x50)) return 'webp'
  return null
}

/** See RedrawPhoto in ports/photos.ts. @throws {Error} where the drawn file still held more than pixels: a mistake in the code */
export async function redrawPhoto(image: Uint8Array): Promise<CleanPhoto | null> {
  if (imageKind(image) === null || image.length > photoLimits.bytes) return null
  const sharp = await openSharp()
  const side = photoLimits.sidePx
  const drawn = await sharp(image, { limitInputPixels: photoLimits.pixels, failOn: 'error' })
    .autoOrient()
    .resize({ width: side, height: side, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .jpeg({ quality: QUALITY })
    .timeout({ seconds: PATIENCE_S })
    .toBuffer({ resolveWithObject: true })
    .catch(() => null)
  if (drawn === null) return null
  const segments = jpegSegments(drawn.data)
  if (segments === null || segments.beside.length > 0 || segments.bytesAfterEnd > 0) {
    throw new Error(`a photo drawn anew still holds ${segments?.beside.join(', ') ?? 'what cannot be read'}`)
  }
  return { jpeg: drawn.data, widthPx: drawn.info.width, heightPx: drawn.info.height }
}

/** Loaded with the first photo, since most commands meet none; every reader but ours is switched off. */
async function openSharp() {
  const { default: sharp } = await import('sharp')
  sharp.block({ operation: ['VipsForeignLoad'] })
  sharp.unblock({ operation: readers })
  sharp.cache(false)
  sharp.concurrency(1)
  return sharp
}
