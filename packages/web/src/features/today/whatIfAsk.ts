/** What may be asked about a decision before it is made, and what an answer already given tells of one now made. */
import { changesBy, type DayEvidence, type DecideAsk, type WhatIf, type WhatIfAsk } from '@gaugewright/contract'
import type { QueryClient } from '@tanstack/react-query'
import { keys } from '../../api/queries.ts'

/** The decisions that change anything. */
export const whatIfActs = ['stands', 'amended', 'set aside'] as const
export type WhatIfAct = (typeof whatIfActs)[number]

type Known = Pick<DayEvidence, 'day' | 'readingId' | 'proposal' | 'suggested' | 'reading'>

/** The acts that can be weighed for a reading: amending needs a proposal. */
export function actsFor({ proposal }: Known): WhatIfAct[] {
  return whatIfActs.filter((act) => act !== 'amended' || proposal !== null)
}

/** What is weighed first: what the desk offers first, or the proposal where the observer is to be asked. */
export function firstAct({ proposal, suggested }: Known): WhatIfAct {
  if (suggested === 'stands') return 'stands'
  return proposal === null ? 'set aside' : 'amended'
}

export function whatIfAskOf(known: Known, act: WhatIfAct): WhatIfAsk {
  const { day, readingId, proposal, reading } = known
  return askOf(day, { readingId, verdict: act, amended: act === 'amended' ? proposal : null }, reading)
}

function askOf(
  day: string,
  decision: Pick<DecideAsk, 'readingId' | 'verdict' | 'amended'>,
  reported: { amountUm: number; isTrace: boolean },
): WhatIfAsk {
  return { day, changes: changesBy(decision, reported) }
}

/** What will be after a decision, where a what-if already answered tells it; null where not known. */
export function foreseen(
  client: QueryClient,
  day: string,
  decision: DecideAsk,
  reported: { amountUm: number; isTrace: boolean },
): WhatIf | null {
  if (decision.verdict === 'asked') return null
  const known = client.getQueryState<WhatIf>(keys.whatIf(askOf(day, decision, reported)))
  return known?.data !== undefined && !known.isInvalidated ? known.data : null
}
