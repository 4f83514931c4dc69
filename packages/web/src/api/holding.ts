/** Holding on to observers, as the screens ask about it. */
import type { AnswerOccasionAsk, Contacts, Holding, LeafAsk, RollOfGauge } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

export const holdingQuery = queryOptions({
  queryKey: ['holding'],
  queryFn: ({ signal }) => askDesk<Holding>(routes.holding.path, undefined, signal),
  staleTime: 60_000,
})
export const rollQuery = (gauge: string) =>
  queryOptions({
    queryKey: ['roll', gauge],
    queryFn: ({ signal }) =>
      askDesk<RollOfGauge>(`${routes.rollOfGauge.path}?gauge=${encodeURIComponent(gauge)}`, undefined, signal),
  })
export const answerOccasion = (ask: AnswerOccasionAsk) => askDesk<Holding>(routes.answerOccasion.path, ask)
export const sendLeaf = (ask: LeafAsk) => askDesk<Contacts>(routes.sendLeaf.path, ask)
export const networkLetterUrl = (period: string, words: string, names: boolean) =>
  `${routes.networkLetter.path}?${new URLSearchParams({ period, words, names: names ? 'yes' : 'no' })}`
