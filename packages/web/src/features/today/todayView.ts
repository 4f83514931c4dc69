/** Pure view of a day: which rows to show in which order, what comes next, and the day with a decision put in. */
import type { DayReview, DecideAsk, DocketRow, RollRow, WireDecision } from '@gaugewright/contract'

export type DocketParts = { toDecide: DocketRow[]; asked: DocketRow[]; decided: RollRow[] }

/**
 * Docket rows without a decision and those asked about, weightiest first; then what a person decided, the latest first.
 * A decided reading leaves the docket, so that the last part comes from the roll.
 */
export function docketParts(review: DayReview): DocketParts {
  const byWeight = [...review.docket].sort((a, b) => b.weight - a.weight)
  return {
    toDecide: byWeight.filter((row) => !row.decision),
    asked: byWeight.filter((row) => row.decision?.verdict === 'asked'),
    decided: review.roll
      .filter(isSettledByPerson)
      .sort((a, b) => (a.decision!.decidedAtUtc < b.decision!.decidedAtUtc ? 1 : -1)),
  }
}

function isSettledByPerson(row: RollRow): boolean {
  return row.decision?.by.kind === 'person' && row.decision.verdict !== 'asked'
}

/** What the docket says of a reading: that it stands, or the likeliest mistake, whichever has the better odds. */
export function bestGuess(row: DocketRow): { kind: DocketRow['likeliest']; odds: number } {
  return row.likeliest !== 'stands' && row.standsOdds >= row.likeliestOdds
    ? { kind: 'stands', odds: row.standsOdds }
    : { kind: row.likeliest, odds: row.likeliestOdds }
}

/** The row that follows a decided one: the next to decide below it, else the first to decide, else null. */
export function nextToDecide(review: DayReview, readingId: string): DocketRow | null {
  const order = [...review.docket].sort((a, b) => b.weight - a.weight)
  const at = order.findIndex((row) => row.readingId === readingId)
  const open = (row: DocketRow) => !row.decision && row.readingId !== readingId
  return order.slice(at + 1).find(open) ?? order.find(open) ?? null
}

/** The neighbour of an item in a list, clamped at both ends; the first when the item is not in it. */
export function stepIn<Item>(items: readonly Item[], isCurrent: (item: Item) => boolean, by: 1 | -1): Item | null {
  const at = items.findIndex(isCurrent)
  if (at < 0) return items[0] ?? null
  return items[Math.min(items.length - 1, Math.max(0, at + by))] ?? null
}

/** The decision as it will stand until the desk answers; its id tells that it is not stored yet. */
export function provisionalDecision(ask: DecideAsk, nowUtc: string): WireDecision {
  return {
    id: `provisional-${ask.readingId}`,
    readingId: ask.readingId,
    verdict: ask.verdict,
    amended: ask.amended,
    by: { kind: 'person', name: ask.by },
    reason: ask.reason,
    decidedAtUtc: nowUtc,
    undoes: null,
  }
}

export function isProvisional(decision: WireDecision | null): boolean {
  return decision?.id.startsWith('provisional-') ?? false
}

/** The day with one decision put in (or taken out, with null): docket, roll and counts. The input is not changed. */
export function withDecision(review: DayReview, readingId: string, decision: WireDecision | null): DayReview {
  const docket = review.docket.map((row) => (row.readingId === readingId ? { ...row, decision } : row))
  const roll = review.roll.map((row) =>
    row.readingId === readingId ? { ...row, decision, acceptedUm: acceptedUm(row, decision) } : row,
  )
  const toDecide = docket.filter((row) => !row.decision).length
  return {
    ...review,
    docket,
    roll,
    facts: { ...review.facts, toDecide, decided: roll.filter(isSettledByPerson).length },
  }
}

function acceptedUm(row: RollRow, decision: WireDecision | null): number | null {
  if (decision?.verdict === 'set aside') return null
  if (decision?.verdict === 'amended') return decision.amended?.amountUm ?? null
  return row.amountUm
}

/** The last decision of a person in force on this day, one still on its way before all stored ones: what undo takes back. */
export function lastDecision(review: DayReview): WireDecision | null {
  const made = [...review.roll, ...review.docket].flatMap((row) =>
    row.decision && row.decision.by.kind === 'person' ? [row.decision] : [],
  )
  const isLater = (a: WireDecision, b: WireDecision) =>
    isProvisional(a) === isProvisional(b) ? a.decidedAtUtc > b.decidedAtUtc : isProvisional(a)
  return made.reduce<WireDecision | null>((latest, d) => (latest === null || isLater(d, latest) ? d : latest), null)
}

export type AreaEffect = { name: string; beforeMm: number; afterMm: number }

/** County means that differ between two reviews by at least `atLeastMm`, largest change first. */
export function areaEffects(
  before: readonly { name: string; meanMm: number }[],
  after: readonly { name: string; meanMm: number }[],
  atLeastMm: number,
): AreaEffect[] {
  const now = new Map(before.map((area) => [area.name, area.meanMm]))
  return after
    .flatMap(({ name, meanMm }) => {
      const beforeMm = now.get(name)
      return beforeMm === undefined ? [] : [{ name, beforeMm, afterMm: meanMm }]
    })
    .filter(({ beforeMm, afterMm }) => Math.abs(afterMm - beforeMm) >= atLeastMm)
    .sort((a, b) => Math.abs(b.afterMm - b.beforeMm) - Math.abs(a.afterMm - a.beforeMm))
}
