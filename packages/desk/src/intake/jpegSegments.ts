/**
 * The segments of a JPEG file before its pixels, and what stands behind its end: whatever could tell where, when and with
 * what a photo was taken. Source: [T81] annex B.
 */
export interface JpegSegments {
  /** Names of segments that carry something beside the pixels: `APP1 Exif`, `COM`; the plain JFIF header is none. */
  beside: string[]
  /** Bytes after the end of the image. */
  bytesAfterEnd: number
}

/** Null where the bytes are not a JPEG that can be walked from its start to its end. */
export function jpegSegments(bytes: Uint8Array): JpegSegments | null {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null
  const beside: string[] = []
  let at = 2
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) return null
    const marker = bytes[at + 1]!
    if (marker === 0xff) {
      at += 1 // filler
      continue
    }
    if (marker === 0xd9) return { beside, bytesAfterEnd: bytes.length - at - 2 }
    const length = bytes[at + 2]! * 256 + bytes[at + 3]!
    if (length < 2) return null
    const label = labelAt(bytes, at + 4, Math.min(at + 2 + length, at + 24))
    const isJfif = marker === 0xe0 && label === 'JFIF' && length === 16
    if (marker >= 0xe0 && marker <= 0xef && !isJfif) beside.push(`APP${marker - 0xe0} ${label}`.trim())
    if (marker === 0xfe) beside.push('COM')
    at += 2 + length
    if (marker === 0xda) at = endOfScan(bytes, at)
  }
  return bytes[at] === 0xff && bytes[at + 1] === 0xd9 ? { beside, bytesAfterEnd: bytes.length - at - 2 } : null
}

/** Pixels run until a marker that is neither a stuffed zero nor a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  let at = from
  while (at + 1 < bytes.length) {
    const next = bytes[at + 1]!
    if (bytes[at] === 0xff && next !== 0 && !(next >= 0xd0 && next <= 0xd7)) return at
    at += 1
  }
  return bytes.length
}

function labelAt(bytes: Uint8Array, from: number, to: number): string {
  let label = ''
  for (let at = from; at < to && bytes[at]! >= 0x20 && bytes[at]! < 0x7f; at++) label += String.fromCharCode(bytes[at]!)
  return label
}
