/** Which findings of a morning differ between two judgements of it: what a decision does to the readings around. Pure. */
import { type ChangedFinding, type FindingOdds, leastOddsChange } from '@gaugewright/contract'
import { mistakes } from '@gaugewright/science'
import type { JudgedMorning } from './judgedMorning.ts'
import { leftToDecide } from './leftToDecide.ts'

export interface FindingChanges {
  /** Largest change of the odds of standing first. */
  changed: ChangedFinding[]
  toDecideBefore: number
  toDecideAfter: number
}

/**
 * @param decided  ids of the readings that were decided about: their own findings are not told
 * @returns findings whose odds of standing moved enough to matter, that came onto the docket or left it, or whose doubt
 *   has another likeliest mistake
 */
export function changedFindings(
  before: JudgedMorning,
  after: JudgedMorning,
  decided: ReadonlySet<string>,
): FindingChanges {
  const leftBefore = leftToDecide(before)
  const leftAfter = leftToDecide(after)
  const gaugeOf = new Map(before.morning.gauges.map((gauge) => [gauge.id, gauge]))
  const changed: ChangedFinding[] = []
  for (const reading of before.morning.readings) {
    const gauge = gaugeOf.get(reading.gaugeId)
    if (gauge === undefined || decided.has(reading.id)) continue
    const was = oddsIn(before, reading.id, leftBefore)
    const will = oddsIn(after, reading.id, leftAfter)
    if (was === null || will === null || !isChanged(was, will)) continue
    const { amountUm, isTrace } = reading
    const { code, name } = gauge
    changed.push({ readingId: reading.id, gaugeId: gauge.id, code, name, amountUm, isTrace, before: was, after: will })
  }
  changed.sort((a, b) => oddsMoved(b) - oddsMoved(a) || (a.code < b.code ? -1 : 1))
  return { changed, toDecideBefore: leftBefore.size, toDecideAfter: leftAfter.size }
}

function oddsMoved({ before, after }: ChangedFinding): number {
  return Math.abs(after.standsOdds - before.standsOdds)
}

function isChanged(before: FindingOdds, after: FindingOdds): boolean {
  if (Math.abs(after.standsOdds - before.standsOdds) >= leastOddsChange) return true
  if (before.toDecide !== after.toDecide) return true
  return before.toDecide && before.likeliest !== after.likeliest
}

function oddsIn(judged: JudgedMorning, readingId: string, left: ReadonlySet<string>): FindingOdds | null {
  const found = judged.odds.get(readingId)
  if (found === undefined) return null
  const { judgement } = judged
  return {
    canTell: found.canTell,
    standsOdds: found.standsOdds,
    likeliest: mistakes[judgement.mistake[found.index] ?? 0] ?? 'other',
    likeliestOdds: judgement.pMistake[found.index] ?? 0,
    toDecide: left.has(readingId),
  }
}
