/** What a decision did, as facts that the screen words: which reading, which county mean moved most, what is left. */
import type { AreaMean, DayReview, DecideAsk } from '@gaugewright/contract'
import { type AreaEffect, areaEffects } from './todayView.ts'

export type Done =
  | { kind: 'decided'; ask: DecideAsk; gauge: string }
  | { kind: 'undone'; readingId: string; gauge: string }

export type Effect = {
  done: Done
  readingId: string
  /** The county mean that moved most; null where none moved; undefined while the desk has not answered. */
  area: AreaEffect | null | undefined
  left: number
}

export function effectOf(
  done: Done,
  before: readonly AreaMean[],
  after: readonly AreaMean[] | null,
  review: DayReview | undefined,
): Effect {
  const leastMm = review?.network.unit === 'in' ? 0.127 : 0.05
  return {
    done,
    readingId: done.kind === 'decided' ? done.ask.readingId : done.readingId,
    area: after === null || before.length === 0 ? undefined : (areaEffects(before, after, leastMm)[0] ?? null),
    left: review?.facts.toDecide ?? 0,
  }
}
