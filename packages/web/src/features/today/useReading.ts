import type { WhatIfAsk } from '@gaugewright/contract'
import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import { evidenceQuery, whatIfQuery } from '../../api/queries.ts'
import { firstAct, type WhatIfAct, whatIfAskOf } from './whatIfAsk.ts'

export type ReadingAsk = {
  day: string | undefined
  readingId: string | null
  nextReadingId: string | null
  /** The decision that is weighed; what the desk offers first when the coordinator has chosen none. */
  act: WhatIfAct | null
}

/** Evidence and what-if of the chosen reading; those of the reading that comes next are fetched ahead. */
export function useReading({ day, readingId, nextReadingId, act: chosenAct }: ReadingAsk) {
  const client = useQueryClient()
  const enabled = day !== undefined && readingId !== null
  const evidence = useQuery({ ...evidenceQuery(day ?? '', readingId ?? ''), enabled })
  const known = enabled && evidence.data?.readingId === readingId ? evidence.data : null
  const act = known === null ? null : (chosenAct ?? firstAct(known))
  const ask = known === null || act === null ? { day: day ?? '', changes: [] } : whatIfAskOf(known, act)
  const whatIf = useQuery({
    ...whatIfQuery(ask),
    enabled: known !== null,
    // While another decision about the same reading is worked out, what was told of the last one stays.
    placeholderData: (before, query) =>
      (query?.queryKey[2] as WhatIfAsk | undefined)?.changes[0]?.readingId === readingId ? before : undefined,
  })
  const ready = known !== null && whatIf.isSuccess
  useEffect(() => {
    if (!ready || day === undefined || nextReadingId === null) return
    void client
      .fetchQuery({ ...evidenceQuery(day, nextReadingId), staleTime: 60_000 })
      .then((next) => client.prefetchQuery({ ...whatIfQuery(whatIfAskOf(next, firstAct(next))), staleTime: 60_000 }))
      .catch(() => undefined) // only ahead of time: the screen asks again, and shows the problem, when it needs it
  }, [client, ready, day, nextReadingId])
  return {
    evidence: known,
    evidenceError: enabled ? evidence.error : null,
    act,
    whatIf: known ? (whatIf.data ?? null) : null,
    whatIfError: known ? whatIf.error : null,
    isWhatIfWaiting: whatIf.isPlaceholderData,
  }
}
