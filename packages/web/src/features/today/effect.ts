/** What a decision did, as facts that the screen words: which reading, which county mean and which other finding moved most. */
import { type DayReview, type DecideAsk, leastOddsChange, type WhatIf } from '@gaugewright/contract'
import { type AreaEffect, areaEffects } from './todayView.ts'

export type Done =
  | { kind: 'decided'; ask: DecideAsk; gauge: string }
  | { kind: 'undone'; readingId: string; gauge: string }

/** Odds of standing of another reading, before and after. */
export type FindingEffect = { readingId: string; name: string; before: number; after: number }

/** What differs between the day before and after; the finding that moved most first. */
export type Outcome = {
  /** The county mean that moved most; null where none moved. */
  area: AreaEffect | null
  findings: readonly FindingEffect[]
  findingCount: number
  left: number
  /** Of these, the ones that the decision itself brought onto the docket; null where only foreseen. */
  newlyLeft: number | null
}

export type Effect = {
  done: Done
  readingId: string
  /** Null while the desk has not answered and nothing was foreseen. */
  outcome: Outcome | null
}

export function effectOf(done: Done, outcome: Outcome | null): Effect {
  return { done, readingId: done.kind === 'decided' ? done.ask.readingId : done.readingId, outcome }
}

/** Seen in the reviews before and after. */
export function outcomeBetween(before: DayReview, after: DayReview, readingId: string): Outcome {
  const findings = findingEffects(before, after, readingId)
  return {
    area: largestArea(before, after.areas),
    findings,
    findingCount: findings.length,
    left: after.facts.toDecide,
    newlyLeft: newcomers(before, after, readingId),
  }
}

/** Told by a what-if before the desk has stored the decision. */
export function outcomeForeseen(before: DayReview, told: WhatIf): Outcome {
  const findings = told.findings.map(({ readingId, name, before: was, after }) => ({
    readingId,
    name,
    before: was.standsOdds,
    after: after.standsOdds,
  }))
  return {
    area: largestArea(before, told.after.areas),
    findings,
    findingCount: told.findingCount,
    left: told.toDecideAfter,
    newlyLeft: null,
  }
}

function largestArea(before: DayReview, after: DayReview['areas']): AreaEffect | null {
  const leastMm = before.network.unit === 'in' ? 0.127 : 0.05
  return areaEffects(before.areas, after, leastMm)[0] ?? null
}

/** Readings whose odds of standing moved enough to matter, or that came onto the docket or left it; largest change first. */
export function findingEffects(before: DayReview, after: DayReview, readingId: string): FindingEffect[] {
  const oddsAfter = new Map(after.roll.map((row) => [row.readingId, row]))
  const leftBefore = toDecide(before)
  const leftAfter = toDecide(after)
  return before.roll
    .flatMap((row): FindingEffect[] => {
      const id = row.readingId
      const then = oddsAfter.get(id)
      if (id === null || id === readingId || row.standsOdds === null || then === undefined || then.standsOdds === null)
        return []
      // What a person decided meanwhile is not an effect.
      if (then.decision?.by.kind === 'person' || row.decision?.by.kind === 'person') return []
      const moved = Math.abs(then.standsOdds - row.standsOdds)
      if (moved < leastOddsChange && leftBefore.has(id) === leftAfter.has(id)) return []
      return [{ readingId: id, name: row.name, before: row.standsOdds, after: then.standsOdds }]
    })
    .sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before))
}

function newcomers(before: DayReview, after: DayReview, readingId: string): number {
  const leftBefore = toDecide(before)
  return [...toDecide(after)].filter((id) => id !== readingId && !leftBefore.has(id)).length
}

function toDecide(review: DayReview): ReadonlySet<string> {
  return new Set(review.docket.filter((row) => row.decision === null).map((row) => row.readingId))
}
