/** The readings of the days around a morning, read once for as long as the ledger has stored no other reading. */
import { createHash } from 'node:crypto'
import type { IsoDay, Reading } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import { RecentlyUsed } from './recentlyUsed.ts'

/** Days looked at by turns. */
const KEPT = 3
const kept = new WeakMap<Ledger, RecentlyUsed<readonly Reading[]>>()

/**
 * @param stored  of the ledger's dayRange(), asked for just before
 * @returns shared with other callers: not to be changed
 */
export async function readingsAround(
  ledger: Ledger,
  networkId: string,
  fromDay: IsoDay,
  toDay: IsoDay,
  stored: number,
): Promise<readonly Reading[]> {
  const cache = kept.get(ledger) ?? new RecentlyUsed<readonly Reading[]>(KEPT)
  kept.set(ledger, cache)
  const key = `${networkId} ${fromDay} ${toDay} ${stored}`
  const before = cache.get(key)
  if (before !== undefined) return before
  const readings = await ledger.readings(networkId, fromDay, toDay)
  cache.set(key, readings)
  return readings
}

const idsKeys = new WeakMap<readonly Reading[], string>()

/** Names the readings of a list by their ids: they are immutable. */
export function idsKeyOf(readings: readonly Reading[]): string {
  const before = idsKeys.get(readings)
  if (before !== undefined) return before
  const key = createHash('sha1')
    .update(readings.map((reading) => reading.id).join('\n'))
    .digest('base64url')
  idsKeys.set(readings, key)
  return key
}
