/** The strongest doubts about readings that nobody changed, each with what lies around it and what that suggests. */
import { nearestGauges } from '../baselines/nearestGauges.ts'
import { type InjectedSet, stepMmOf } from '../data/loadInjected.ts'
import { isoFromDay } from '../data/parseWideCsv.ts'
import type { FindingScores, StrongGoodDay } from '../score/scoreFindings.ts'
import { type LikelyReason, likelyReason } from './likelyReason.ts'
import { type Surroundings, surroundingsOf } from './surroundings.ts'

export interface Doubt extends StrongGoodDay {
  gaugeId: string
  /** ISO date. */
  date: string
  surroundings: Surroundings
  reason: LikelyReason
  /** A mistake was put in at this gauge on the day before or after, and may have led to the doubt. */
  isBesideMistake: boolean
}

/** @param halves  scores of the halves, whose strongest doubts are described */
export function describeDoubts<H extends string>(
  set: InjectedSet,
  halves: Partial<Record<H, FindingScores>>,
): Partial<Record<H, Doubt[]>> {
  const nearest = nearestGauges(set.gauges)
  const changed = new Set(set.truth.map((row) => `${row.gauge} ${row.day}`))
  const describe = (row: StrongGoodDay): Doubt => {
    const { gauge, day } = row
    const surroundings = surroundingsOf({ gauge, day, judged: set.injected, clean: set.clean, nearest })
    return {
      ...row,
      gaugeId: set.gauges.ids[gauge]!,
      date: isoFromDay(day),
      surroundings,
      reason: likelyReason(surroundings, stepMmOf(set)),
      isBesideMistake: changed.has(`${gauge} ${day - 1}`) || changed.has(`${gauge} ${day + 1}`),
    }
  }
  const described = Object.entries<FindingScores | undefined>(halves).map(([half, scores]) => [
    half,
    (scores?.strongestGood ?? []).map(describe),
  ])
  return Object.fromEntries(described)
}
