/** Habits of the gauges: the list, and one gauge. The first look through a record takes the desk a while. */
import type { GaugeHabitsAnswer, NetworkHabitsAnswer } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

/** They change from week to week. */
const STALE_AFTER_MS = 300_000

export const networkHabitsQuery = queryOptions({
  queryKey: ['habits'],
  queryFn: ({ signal }) => askDesk<NetworkHabitsAnswer>(routes.networkHabits.path, undefined, signal),
  staleTime: STALE_AFTER_MS,
})

export const gaugeHabitsQuery = (code: string) =>
  queryOptions({
    queryKey: ['habits', code],
    queryFn: ({ signal }) =>
      askDesk<GaugeHabitsAnswer>(
        routes.gaugeHabits.path.replace(':gauge', encodeURIComponent(code)),
        undefined,
        signal,
      ),
    staleTime: STALE_AFTER_MS,
  })
