/** Events of urgent reports to rows and back. The name stands in its own column, so that it can leave. */
import type { FileUrgentAsk } from '@gaugewright/contract'
import { formatInstant } from '@gaugewright/science'
import type { NewFiling, NewUrgentEvent, UrgentEvent } from '../../ports/urgent.ts'
import { instantMs } from '../instantMs.ts'
import type { UrgentEventTable } from './urgentTables.ts'

export function urgentRow(event: NewFiling | NewUrgentEvent, network_key: number, number: number): UrgentEventTable {
  return {
    network_key,
    number,
    id: event.id,
    report_id: event.reportId,
    what: event.what,
    at_ms: instantMs(event.atUtc),
    by_name: event.by,
    by_person: event.byPersonId,
    target: event.what === 'undone' ? event.target : null,
    body: JSON.stringify(bodyOf(event)),
  }
}

export function urgentEventFromRow(row: UrgentEventTable): UrgentEvent {
  const happened = {
    number: row.number,
    id: row.id,
    reportId: row.report_id,
    atUtc: formatInstant(row.at_ms),
    by: row.by_name,
    byPersonId: row.by_person,
  }
  const body = JSON.parse(row.body) as object
  switch (row.what) {
    case 'filed':
      return { ...happened, what: 'filed', report: { ...(body as FileUrgentAsk), by: row.by_name } }
    case 'undone':
      return { ...happened, what: 'undone', target: row.target ?? '' }
    default:
      return { ...happened, what: row.what, ...body } as UrgentEvent
  }
}

function bodyOf(event: NewFiling | NewUrgentEvent): object {
  switch (event.what) {
    case 'filed': {
      const { by: _by, ...report } = event.report
      return report
    }
    case 'passed on': {
      const { form, way, to, text, outgoingId } = event
      return { form, way, to, text, outgoingId }
    }
    case 'closed':
      return { why: event.why }
    case 'seen':
    case 'undone':
      return {}
  }
}
