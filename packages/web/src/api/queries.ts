/** What the screens may ask the desk, with the keys under which the answers are kept. */
import type { DayEvidence, DayField, DayReview, MapLayers, WhatIf, WhatIfAsk } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

function pathOf(pattern: string, values: Record<string, string>): string {
  return pattern.replace(/:(\w+)/g, (_, name: string) => encodeURIComponent(values[name] ?? ''))
}

export const keys = {
  review: (day: string) => ['review', day] as const,
  field: (day: string) => ['field', day] as const,
  evidence: (day: string, readingId: string) => ['evidence', day, readingId] as const,
  evidenceOfDay: (day: string) => ['evidence', day] as const,
  whatIf: (ask: WhatIfAsk) => ['whatIf', ask.day, ask] as const,
  whatIfOfDay: (day: string) => ['whatIf', day] as const,
}

export const reviewQuery = (day: string) =>
  queryOptions({
    queryKey: keys.review(day),
    queryFn: ({ signal }) => askDesk<DayReview>(pathOf(routes.reviewDay.path, { day }), undefined, signal),
  })

export const fieldQuery = (day: string) =>
  queryOptions({
    queryKey: keys.field(day),
    queryFn: ({ signal }) => askDesk<DayField>(pathOf(routes.fieldForDay.path, { day }), undefined, signal),
  })

export const evidenceQuery = (day: string, readingId: string) =>
  queryOptions({
    queryKey: keys.evidence(day, readingId),
    queryFn: ({ signal }) => askDesk<DayEvidence>(pathOf(routes.evidence.path, { day, readingId }), undefined, signal),
  })

export const whatIfQuery = (ask: WhatIfAsk) =>
  queryOptions({
    queryKey: keys.whatIf(ask),
    queryFn: ({ signal }) => askDesk<WhatIf>(routes.whatIf.path, ask, signal),
  })

export const layersQuery = queryOptions({
  queryKey: ['layers'],
  queryFn: ({ signal }) => askDesk<MapLayers>(routes.mapLayers.path, undefined, signal),
  staleTime: Number.POSITIVE_INFINITY,
})
