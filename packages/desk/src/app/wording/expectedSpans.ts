/** What was expected over the days that explanations name beside the reading's own: figures for their sentences. */
import { type Evidence, type ExpectedOver, expectedOver, type Judgement } from '@gaugewright/science'

export interface ExpectedSpan extends ExpectedOver {
  /** Epoch days, both included. */
  firstDay: number
  lastDay: number
}

/** @returns one entry for the other day of each day slip and for the days of each carried total */
export function expectedSpansOf(judgement: Judgement, { finding, explanations }: Evidence): ExpectedSpan[] {
  return explanations.flatMap(({ detail, firstDay, lastDay }) => {
    if (detail?.kind !== 'day' && detail?.kind !== 'carried') return []
    const days = detail.kind === 'day' ? { firstDay: detail.otherDay, lastDay: detail.otherDay } : { firstDay, lastDay }
    return [{ ...days, ...expectedOver(judgement, finding.gauge, days.firstDay, days.lastDay) }]
  })
}
