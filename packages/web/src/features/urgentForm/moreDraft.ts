/** More about a report, while it is filled in; and what keeps it from being sent. */
import { clockFromInstant, instantFromClock } from './clockTimes.ts'
import { type Seen, stonesOutOfOrder } from './urgentDraft.ts'

export interface MoreProps<S extends Seen> {
  seen: S
  onSeen: (seen: S) => void
  /** Whether half an hour has passed since the last thunder; null where nobody said. */
  isHalfHour: boolean | null
  onHalfHour: (isHalfHour: boolean | null) => void
}

export interface MoreDraft {
  seen: Seen
  /** `HH:MM` on the phone's clock, or empty. */
  began: string
  ended: string
  remark: string
}

export function draftFrom(filing: { seen: Seen; remark?: string | null | undefined }): MoreDraft {
  const { seen } = filing
  return {
    seen,
    began: clockFromInstant(seen.beganAtUtc ?? null),
    ended: clockFromInstant(seen.endedAtUtc ?? null),
    remark: filing.remark ?? '',
  }
}

/** What was seen with its times as instants. What still goes on has no end. */
export function seenOf({ seen, began, ended }: MoreDraft, nowMs: number): Seen {
  return {
    ...seen,
    beganAtUtc: instantFromClock(began, nowMs),
    endedAtUtc: seen.isGoingOn === true ? null : instantFromClock(ended, nowMs),
  }
}

export type MoreTrouble = 'ends early' | 'stones'

export function troubleWith(draft: MoreDraft, nowMs: number): MoreTrouble | null {
  const seen = seenOf(draft, nowMs)
  if (seen.kind === 'hail' && stonesOutOfOrder(seen).length > 0) return 'stones'
  const { beganAtUtc, endedAtUtc } = seen
  return beganAtUtc && endedAtUtc && endedAtUtc < beganAtUtc ? 'ends early' : null
}
