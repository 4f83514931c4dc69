/** The what-if that goes with a reading: its proposal, or leaving it out where there is none. */
import type { DayEvidence, DayField, DecideAsk, WhatIf, WhatIfAsk } from '@gaugewright/contract'
import type { QueryClient } from '@tanstack/react-query'
import { keys } from '../../api/queries.ts'

export function whatIfAskOf(evidence: Pick<DayEvidence, 'day' | 'readingId' | 'proposal'>): WhatIfAsk {
  const { proposal, day, readingId } = evidence
  if (!proposal) return { day, changes: [{ readingId, amountUm: null, isTrace: false }] }
  const { amountUm, isTrace, firstDay, lastDay } = proposal
  return { day, changes: [{ readingId, amountUm, isTrace, firstDay, lastDay }] }
}

/** The field as it will be after a decision, where a what-if already asked tells it; null where not known. */
export function fieldForeseen(client: QueryClient, day: string, ask: DecideAsk): DayField | null {
  if (ask.verdict === 'stands' || ask.verdict === 'asked') return null
  const same = (change: WhatIfAsk['changes'][number] | undefined) =>
    change?.readingId === ask.readingId &&
    change.amountUm === (ask.verdict === 'set aside' ? null : (ask.amended?.amountUm ?? null))
  const found = client
    .getQueryCache()
    .findAll({ queryKey: keys.whatIfOfDay(day) })
    .find((query) => same((query.queryKey[2] as WhatIfAsk | undefined)?.changes[0]))
  return (found?.state.data as WhatIf | undefined)?.after ?? null
}
