/** Urgent reports: the list, what is done with one, its coded text, what the office sets. */
import type {
  CodedUrgent,
  PassOnAsk,
  PassOnForm,
  UrgentItem,
  UrgentLive,
  UrgentNow,
  UrgentSettings,
} from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { type QueryClient, queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

export const urgentKey = ['urgent'] as const

/** Odds and ages change while nothing happens: looked at anew every minute, besides what comes live. */
const LOOK_AGAIN_MS = 60_000

export const urgentQuery = queryOptions({
  queryKey: urgentKey,
  queryFn: ({ signal }) => askDesk<UrgentNow>(routes.urgentNow.path, undefined, signal),
  refetchInterval: LOOK_AGAIN_MS,
})

export const codedQuery = (reportId: string, form: PassOnForm) =>
  queryOptions({
    queryKey: ['urgentCoded', reportId, form],
    queryFn: ({ signal }) =>
      askDesk<CodedUrgent>(
        `${routes.codedUrgent.path.replace(':report', encodeURIComponent(reportId))}?form=${encodeURIComponent(form)}`,
        undefined,
        signal,
      ),
    staleTime: 0,
    gcTime: 0,
  })

export type UrgentAct =
  | { act: 'seen'; reportId: string }
  | ({ act: 'pass on' } & Pick<PassOnAsk, 'reportId' | 'form' | 'destination'>)
  | { act: 'close'; reportId: string; why: string }
  | { act: 'undo'; eventId: string }

/** Every act answers with the list as it then is. @throws {ProblemError} */
export function postUrgentAct(act: UrgentAct): Promise<UrgentNow> {
  switch (act.act) {
    case 'seen':
      return askDesk(routes.markSeen.path, { reportId: act.reportId })
    case 'pass on':
      return askDesk(routes.passOn.path, { reportId: act.reportId, form: act.form, destination: act.destination })
    case 'close':
      return askDesk(routes.closeUrgent.path, { reportId: act.reportId, why: act.why })
    case 'undo':
      return askDesk(routes.undoUrgent.path, { eventId: act.eventId })
  }
}

export function postUrgentSettings(settings: UrgentSettings): Promise<UrgentSettings> {
  return askDesk(routes.setUrgentSettings.path, { settings })
}

/** Puts a report that was just filed into the list at its place, before the whole list is asked for anew. */
export function takeLive(client: QueryClient, live: UrgentLive): void {
  const { item } = live
  if (item === null) return
  client.setQueryData<UrgentNow>(urgentKey, (now) => (now === undefined ? now : withItem(now, item, live.number)))
}

export function withItem(now: UrgentNow, item: UrgentItem, lastEvent: number): UrgentNow {
  const others = now.items.filter(({ report }) => report.id !== item.report.id)
  const isBefore = (other: UrgentItem) => other.state === 'closed' || other.weight < item.weight
  const place = others.findIndex(isBefore)
  const items = place === -1 ? [...others, item] : [...others.slice(0, place), item, ...others.slice(place)]
  const newCount = items.filter(({ state }) => state === 'new').length
  return { ...now, items, newCount, lastEvent: Math.max(now.lastEvent, lastEvent) }
}
