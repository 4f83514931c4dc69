/** A photo that was opened in the browser: its pixels, and what it says of its lens. What it says of its place is not read. */
import exifr from 'exifr'

export interface Opened {
  file: Blob
  url: string
  widthPx: number
  heightPx: number
  /** Null where nobody knows. */
  equivalentMm: number | null
  /** SHA-256 where the desk keeps it already. */
  keptAs: string | null
}

/** @param kept what the desk knows of a photo that it keeps. @returns null where the file cannot be opened as a photo */
export async function openPhoto(
  file: Blob,
  kept: { sha256: string; equivalentMm: number | null } | null = null,
): Promise<Opened | null> {
  const url = URL.createObjectURL(file)
  try {
    const image = await createImageBitmap(file)
    const { width: widthPx, height: heightPx } = image
    image.close()
    const equivalentMm = kept === null ? await equivalentIn(file) : kept.equivalentMm
    return { file, url, widthPx, heightPx, equivalentMm, keptAs: kept?.sha256 ?? null }
  } catch {
    URL.revokeObjectURL(url)
    return null
  }
}

async function equivalentIn(file: Blob): Promise<number | null> {
  const tags: unknown = await exifr.parse(file, { pick: ['FocalLengthIn35mmFormat'] }).catch(() => undefined)
  const mm = Number((tags as { FocalLengthIn35mmFormat?: unknown } | undefined)?.FocalLengthIn35mmFormat)
  return mm > 0 ? mm : null
}
