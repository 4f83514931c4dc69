/** From marks in a photo to what the science measures: null while marks are missing or make no sense. */
import { type Focal, type PhotoAngles, type PhotoPoint, photoAngles } from '@gaugewright/science'
import type { Opened } from './openedPhoto.ts'
import type { MarkName } from './PhotoMarks.tsx'

export function focalOf(
  mm: number | null,
  { a, b }: Partial<Record<MarkName, PhotoPoint>>,
  lengthM: number | null,
  distanceM: number | null,
): Focal | null {
  if (mm !== null) return mm > 0 ? { from: 'equivalent', mm } : null
  if (a === undefined || b === undefined || !lengthM || !distanceM || lengthM < 0 || distanceM < 0) return null
  return Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx) < 2 ? null : { from: 'length', a, b, lengthM, distanceM }
}

export function measure(
  { widthPx, heightPx }: Pick<Opened, 'widthPx' | 'heightPx'>,
  focal: Focal,
  { top, foot, horizon, horizon2 }: Partial<Record<MarkName, PhotoPoint>>,
  cameraM: number,
): PhotoAngles | null {
  const points = [horizon, horizon2].filter((one) => one !== undefined)
  const isOne = points.length === 2 && Math.hypot(points[0]!.xPx - points[1]!.xPx, points[0]!.yPx - points[1]!.yPx) < 2
  if (top === undefined || !(cameraM > 0)) return null
  return photoAngles({
    widthPx,
    heightPx,
    focal,
    top,
    foot: foot ?? null,
    horizon: isOne ? points.slice(0, 1) : points,
    cameraM,
  })
}
