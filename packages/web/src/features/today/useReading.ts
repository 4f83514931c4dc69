import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import { evidenceQuery, whatIfQuery } from '../../api/queries.ts'
import { whatIfAskOf } from './whatIfAsk.ts'

/** Evidence and what-if of the chosen reading; those of the reading that comes next are fetched ahead. */
export function useReading(day: string | undefined, readingId: string | null, nextReadingId: string | null) {
  const client = useQueryClient()
  const enabled = day !== undefined && readingId !== null
  const evidence = useQuery({ ...evidenceQuery(day ?? '', readingId ?? ''), enabled })
  const known = enabled && evidence.data?.readingId === readingId ? evidence.data : null
  const ask = known ? whatIfAskOf(known) : { day: day ?? '', changes: [] }
  const whatIf = useQuery({ ...whatIfQuery(ask), enabled: known !== null })
  const ready = known !== null && whatIf.isSuccess
  useEffect(() => {
    if (!ready || day === undefined || nextReadingId === null) return
    void client
      .fetchQuery({ ...evidenceQuery(day, nextReadingId), staleTime: 60_000 })
      .then((next) => client.prefetchQuery({ ...whatIfQuery(whatIfAskOf(next)), staleTime: 60_000 }))
      .catch(() => undefined) // only ahead of time: the screen asks again, and shows the problem, when it needs it
  }, [client, ready, day, nextReadingId])
  return {
    evidence: known,
    evidenceError: enabled ? evidence.error : null,
    whatIf: known ? (whatIf.data ?? null) : null,
  }
}
