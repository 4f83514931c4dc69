/**
 * A photo drawn anew on the phone: what leaves it is pixels alone, without position, time, device or thumbnail, and no
 * larger than the desk takes.
 */
import { photoLimits } from '@gaugewright/contract'

const QUALITIES = [0.82, 0.7, 0.55, 0.4] as const
/** Over a poor signal a smaller picture arrives, a larger one may not. */
const WISHED_BYTES = 900_000
const WISHED_SIDE_PX = 1600

export interface DrawnPhoto {
  jpeg: Blob
  widthPx: number
  heightPx: number
}

/** The size that a picture is drawn with: its shape stays, its longest side is at most `sidePx`. */
export function sizeWithin(widthPx: number, heightPx: number, sidePx: number): { widthPx: number; heightPx: number } {
  const share = Math.min(1, sidePx / Math.max(widthPx, heightPx))
  return { widthPx: Math.max(1, Math.round(widthPx * share)), heightPx: Math.max(1, Math.round(heightPx * share)) }
}

/** Null where the browser cannot open the file as a picture. The browser turns it by what the phone wrote. */
export async function redrawOnPhone(file: Blob): Promise<DrawnPhoto | null> {
  const picture = await createImageBitmap(file).catch(() => null)
  if (picture === null) return null
  try {
    for (const sidePx of [WISHED_SIDE_PX, WISHED_SIDE_PX / 2]) {
      const size = sizeWithin(picture.width, picture.height, sidePx)
      const canvas = document.createElement('canvas')
      canvas.width = size.widthPx
      canvas.height = size.heightPx
      const context = canvas.getContext('2d', { alpha: false })
      if (context === null) return null
      context.drawImage(picture, 0, 0, size.widthPx, size.heightPx)
      for (const quality of QUALITIES) {
        const jpeg = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', quality))
        if (jpeg !== null && jpeg.size <= Math.min(WISHED_BYTES, photoLimits.bytes)) return { jpeg, ...size }
      }
    }
    return null
  } finally {
    picture.close()
  }
}
