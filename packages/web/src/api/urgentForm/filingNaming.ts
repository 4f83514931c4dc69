import type { FileUrgentInput } from '@gaugewright/contract'
import type { KeptUrgent } from './keptUrgent.ts'

/** A filing that says what the newest one of the report says, and names every photo that the desk has. Null without a filing. */
export function filingNaming(
  reportId: string,
  kept: readonly KeptUrgent[],
  id: string,
  nowUtc: string,
): FileUrgentInput | null {
  const own = kept.filter((one) => one.reportId === reportId).sort((one, other) => one.seq - other.seq)
  const newest = own.filter((one) => one.what === 'filing').at(-1)
  if (newest === undefined) return null
  const photoIds = own.flatMap((one) => (one.what === 'photo' && one.sha256 !== null ? [one.sha256] : []))
  return { ...newest.filing, id, updates: reportId, sentAtUtc: nowUtc, photoIds: [...new Set(photoIds)] }
}
