/** What the events of a report come to: its newest filing, who saw it, where it went, whether it is closed. Pure. */
import type { FileUrgentAsk, PassedOn, UrgentState } from '@gaugewright/contract'
import type { UrgentEvent } from '../../ports/urgent.ts'

export interface ReportNow {
  /** Id of the first filing. */
  id: string
  /** The newest filing. */
  report: FileUrgentAsk
  filings: number
  /** Of the first filing. */
  receivedAtUtc: string
  /** Of the newest filing. */
  filedAtUtc: string
  /** Who tells: two reports of one witness do not support each other. */
  witness: string
  state: UrgentState
  seenBy: { eventId: string; by: string; atUtc: string }[]
  passedOn: PassedOn[]
  closed: { eventId: string; by: string; atUtc: string; why: string } | null
}

/** @param events  of one report, oldest first; @returns null where no filing is among them */
export function foldEvents(events: readonly UrgentEvent[]): ReportNow | null {
  const undone = new Set(events.map((event) => (event.what === 'undone' ? event.target : null)))
  let now = null as ReportNow | null
  for (const event of events) {
    if (event.what === 'filed') {
      now =
        now === null
          ? begun(event, event.report)
          : { ...now, report: event.report, filings: now.filings + 1, filedAtUtc: event.atUtc }
      continue
    }
    if (now === null || undone.has(event.id)) continue
    const { id: eventId, by, atUtc } = event
    if (event.what === 'seen') now.seenBy.push({ eventId, by, atUtc })
    if (event.what === 'passed on') {
      const { form, way, to, text } = event
      now.passedOn.push({ eventId, by, atUtc, form, way, to, text })
    }
    if (event.what === 'closed') now.closed = { eventId, by, atUtc, why: event.why }
  }
  return now === null ? null : { ...now, state: stateOf(now) }
}

function begun(event: UrgentEvent, report: FileUrgentAsk): ReportNow {
  return {
    id: event.reportId,
    report,
    filings: 1,
    receivedAtUtc: event.atUtc,
    filedAtUtc: event.atUtc,
    witness: event.byPersonId ?? `name ${event.by.toLowerCase()}`,
    state: 'new',
    seenBy: [],
    passedOn: [],
    closed: null,
  }
}

function stateOf({ closed, passedOn, seenBy }: ReportNow): UrgentState {
  if (closed !== null) return 'closed'
  if (passedOn.length > 0) return 'passed on'
  return seenBy.length > 0 ? 'seen' : 'new'
}
