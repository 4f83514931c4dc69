/**
 * A report as it is filled in. The first filing holds what two taps tell; more follows as filings that add to it, each with
 * all that is known by then, so that the newest alone counts.
 */
import type { FileUrgentInput, UrgentKind } from '@gaugewright/contract'
import { type HailObjectName, hailObjectMm } from '@gaugewright/science'

export type Seen = FileUrgentInput['seen']
export type SeenOf<Kind extends UrgentKind> = Extract<Seen, { kind: Kind }>
export type StoneInput = SeenOf<'hail'>['largest']

export interface Sender {
  where: FileUrgentInput['where']
  by: string
}

/** What goes with every filing, beside what was seen. */
export interface FilingAsk {
  sender: Sender
  seen: Seen
  seenAtUtc: string
  remark?: string | null
  photoIds?: string[]
  /** Id of the first filing, where this adds to it. */
  updates?: string | null
}

export function makeFiling(ask: FilingAsk, newId: () => string, nowUtc: string): FileUrgentInput {
  return {
    id: newId(),
    updates: ask.updates ?? null,
    where: ask.sender.where,
    by: ask.sender.by,
    seenAtUtc: ask.seenAtUtc,
    sentAtUtc: nowUtc,
    remark: ask.remark ?? null,
    photoIds: ask.photoIds ?? [],
    seen: ask.seen,
  }
}

export function stoneByObject(object: HailObjectName): StoneInput {
  return { by: 'object', object, diameterMm: Math.round(1000 * hailObjectMm(object)) / 1000 }
}

/**
 * Whether stones may be measured by hand now: it has stopped, and the last thunder is half an hour gone. Until then only
 * estimates from inside are asked for. Source: [NWSLightning].
 */
export function mayMeasure(isGoingOn: boolean | null | undefined, isHalfHourSinceThunder: boolean): boolean {
  return isGoingOn === false && isHalfHourSinceThunder
}

/** Largest, typical and smallest must not contradict each other; the names of those that do. */
export function stonesOutOfOrder(seen: SeenOf<'hail'>): ('typical' | 'smallest')[] {
  const largest = seen.largest.diameterMm
  const typical = seen.typical?.diameterMm
  const smallest = seen.smallest?.diameterMm
  const found: ('typical' | 'smallest')[] = []
  if (typical !== undefined && typical > largest) found.push('typical')
  if (smallest !== undefined && smallest > Math.min(largest, typical ?? largest)) found.push('smallest')
  return found
}

export const mpsPerUnit = { mph: 0.44704, 'km/h': 1 / 3.6 } as const
export type SpeedUnit = keyof typeof mpsPerUnit

export function speedUnitOf(unit: 'mm' | 'in'): SpeedUnit {
  return unit === 'in' ? 'mph' : 'km/h'
}
