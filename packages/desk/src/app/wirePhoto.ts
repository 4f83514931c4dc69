import type { Photo } from '@gaugewright/contract'
import type { StoredPhoto } from '../ports/photos.ts'

/** A photo as the interface tells of it: without who sent it, which the report says. */
export function wirePhoto({ sha256, reportId, bytes, widthPx, heightPx, receivedAtUtc }: StoredPhoto): Photo {
  return { sha256, reportId, bytes, widthPx, heightPx, receivedAtUtc }
}
