/** What a store of urgent reports refuses, worded once for all adapters; and when two filings are the same. */
import type { FileUrgentAsk } from '@gaugewright/contract'
import { LedgerError } from '../ports/ledgerError.ts'

export function urgentIdTaken(id: string): LedgerError {
  return new LedgerError(
    'URGENT_ID_TAKEN',
    `The urgent report "${id}" is there with another content.`,
    'Make a new id for each report; for more about this one, name it in `updates`.',
  )
}

export function urgentUnknown(reportId: string): LedgerError {
  return new LedgerError('URGENT_UNKNOWN', `There is no urgent report "${reportId}".`, 'Look at the list again.')
}

export function urgentEventIdTaken(): LedgerError {
  return new LedgerError('ID_TAKEN', 'The event has an id that another event has.', 'Give each a fresh id.')
}

/**
 * What makes two filings one and the same: all that was observed. The instant of sending differs each time a phone tries
 * again, and the name is kept apart.
 */
export function filingContent(report: FileUrgentAsk): string {
  const { by: _by, sentAtUtc: _sentAtUtc, ...content } = report
  return JSON.stringify(sorted(content))
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted)
  if (value === null || typeof value !== 'object') return value
  const entries = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1))
  return Object.fromEntries(entries.map(([name, of]) => [name, sorted(of)]))
}
