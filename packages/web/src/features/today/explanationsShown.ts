/** Which explanations the bars show: the likeliest, all of a hundredth or more, and that the reading stands, always. */
import type { DayEvidence } from '@gaugewright/contract'

type Shown = Pick<DayEvidence['explanations'][number], 'kind' | 'odds'>

/** Likeliest first. The input is not changed. */
export function explanationsShown<Explanation extends Shown>(explanations: readonly Explanation[]): Explanation[] {
  const LEAST_ODDS = 0.01
  return [...explanations]
    .sort((a, b) => b.odds - a.odds)
    .filter(({ kind, odds }, index) => index === 0 || kind === 'stands' || odds >= LEAST_ODDS)
}
