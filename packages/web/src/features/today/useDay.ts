import type { DayReview, DecideAsk } from '@gaugewright/contract'
import { keepPreviousData, useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { postDecision, postUndo } from '../../api/decisions.ts'
import { problemFrom } from '../../api/problemError.ts'
import { fieldQuery, keys, reviewQuery } from '../../api/queries.ts'
import { type Effect, effectOf, outcomeBetween, outcomeForeseen } from './effect.ts'
import { isProvisional, provisionalDecision, withDecision } from './todayView.ts'
import { foreseen } from './whatIfAsk.ts'

type Decide = { ask: DecideAsk; day: string; gauge: string; reported: { amountUm: number; isTrace: boolean } }
type Undo = { decisionId: string | null; readingId: string; day: string; gauge: string }
export type Failure = { problem: ReturnType<typeof problemFrom>; gauge: string; retry: () => void }

/**
 * One observing day: its review and field, and the two acts that change them. A decision shows at once; the desk's answer
 * replaces it, with decisions still on their way put back in. Decisions are sent one after the other, in order.
 */
export function useDay(dayAsked: string) {
  const client = useQueryClient()
  const review = useQuery({ ...reviewQuery(dayAsked), placeholderData: keepPreviousData })
  const day = review.data?.day
  const field = useQuery({ ...fieldQuery(day ?? ''), enabled: day !== undefined })
  const [effect, setEffect] = useState<Effect | null>(null)
  const [failure, setFailure] = useState<Failure | null>(null)

  const show = (of: string, next: (now: DayReview) => DayReview) => {
    for (const key of [of, 'latest'])
      client.setQueryData<DayReview>(keys.review(key), (now) => (now && now.day === of ? next(now) : now))
  }
  const shown = (of: string) =>
    [of, 'latest'].map((key) => client.getQueryData<DayReview>(keys.review(key))).find((r) => r?.day === of)
  /** The desk's answer, with what is still on its way put in again. */
  const settle = (answer: DayReview, settled: Decide | Undo) => {
    const waiting = client.getMutationCache().findAll({ mutationKey: ['decision'], status: 'pending' })
    const rest = waiting
      .map((mutation) => mutation.state.variables as Partial<Decide & Undo> | undefined)
      .filter((v) => v?.day === answer.day && v !== settled)
    const now = new Date().toISOString()
    const merged = rest.reduce<DayReview>((r, v) => {
      const id = v?.ask?.readingId ?? v?.readingId ?? ''
      return withDecision(r, id, v?.ask ? provisionalDecision(v.ask, now) : null)
    }, answer)
    client.setQueryData(['stored', answer.day], answer)
    if (!shown(answer.day)) client.setQueryData(keys.review(answer.day), merged)
    show(answer.day, () => merged)
    for (const queryKey of [keys.field(answer.day), keys.evidenceOfDay(answer.day), keys.whatIfOfDay(answer.day)])
      void client.invalidateQueries({ queryKey })
    // What is decided about one day is also felt on those beside it, when they are looked at again.
    const isOtherDay = ({ queryKey: [what, of] }: { queryKey: readonly unknown[] }) =>
      ['review', 'field', 'evidence', 'whatIf'].includes(String(what)) && of !== answer.day && of !== 'latest'
    void client.invalidateQueries({ predicate: isOtherDay, refetchType: 'none' })
  }
  const before = async (of: string) => {
    setFailure(null)
    await Promise.all([of, 'latest'].map((key) => client.cancelQueries({ queryKey: keys.review(key) })))
  }
  const failed = (error: unknown, gauge: string, of: string, retry: () => void) => {
    setEffect(null)
    setFailure({ problem: problemFrom(error), gauge, retry })
    void client.invalidateQueries({ queryKey: keys.review(of) })
    void client.invalidateQueries({ queryKey: keys.review('latest') })
  }

  const decide = useMutation({
    mutationKey: ['decision'],
    scope: { id: 'decisions' },
    mutationFn: async ({ ask, day: of }: Decide) => {
      const was = shown(of)
      return { was, answer: await postDecision(ask) }
    },
    onMutate: (what) => {
      void before(what.day)
      const was = shown(what.day)
      // What was told before another decision, still on its way, no longer holds.
      const isAlone = client.isMutating({ mutationKey: ['decision'] }) <= 1
      const told = isAlone ? foreseen(client, what.day, what.ask, what.reported) : null
      if (told) client.setQueryData(keys.field(what.day), told.after)
      show(what.day, (now) =>
        withDecision(now, what.ask.readingId, provisionalDecision(what.ask, new Date().toISOString())),
      )
      setEffect(effectOf({ kind: 'decided', ...what }, was && told ? outcomeForeseen(was, told) : null))
    },
    onSuccess: ({ was, answer }, what) => {
      settle(answer, what)
      setEffect(effectOf({ kind: 'decided', ...what }, was ? outcomeBetween(was, answer, what.ask.readingId) : null))
    },
    onError: (error, what) => failed(error, what.gauge, what.day, () => decide.mutate(what)),
  })

  const undo = useMutation({
    mutationKey: ['decision'],
    scope: { id: 'decisions' },
    mutationFn: async ({ decisionId, readingId, day: of }: Undo) => {
      // A decision that was on its way when undo was asked has its id only now, from the desk's answer to it.
      const stored = client.getQueryData<DayReview>(['stored', of])
      const was = shown(of)
      const id = decisionId ?? stored?.roll.find((row) => row.readingId === readingId)?.decision?.id
      const answer = id === undefined && stored ? stored : await postUndo({ decisionId: id ?? '', by: 'coordinator' })
      return { was, answer }
    },
    onMutate: (what) => {
      void before(what.day)
      show(what.day, (now) => withDecision(now, what.readingId, null))
      setEffect(effectOf({ kind: 'undone', gauge: what.gauge, readingId: what.readingId }, null))
    },
    onSuccess: ({ was, answer }, what) => {
      settle(answer, what)
      const done = { kind: 'undone', gauge: what.gauge, readingId: what.readingId } as const
      setEffect(effectOf(done, was ? outcomeBetween(was, answer, what.readingId) : null))
    },
    onError: (error, what) => failed(error, what.gauge, what.day, () => undo.mutate(what)),
  })

  return {
    review,
    field: field.data ?? null,
    fieldError: field.error,
    effect,
    clearEffect: () => setEffect(null),
    failure,
    clearFailure: () => setFailure(null),
    decide: (what: Decide) => decide.mutate(what),
    undo: (what: Omit<Undo, 'decisionId'>, decision: { id: string }) =>
      undo.mutate({ ...what, decisionId: isProvisional(decision as never) ? null : decision.id }),
  }
}
