/** A message as a row and back. */
import type { OutgoingContent, OutgoingEvent, OutgoingPurpose, OutgoingState } from '../../ports/outbox.ts'
import { instantMs } from '../instantMs.ts'
import { evenInstant } from '../outbox/evenInstant.ts'
import { type OutgoingRecord, recipientOf } from '../outbox/outgoingRecord.ts'
import type { OutgoingEventTable, OutgoingTable } from './outgoingTables.ts'

/** Everything but the place in the table. */
export function rowFromOutgoing(record: OutgoingRecord): Omit<OutgoingTable, 'network_key' | 'sequence'> {
  return {
    id: record.id,
    message_key: record.key,
    purpose: record.purpose,
    kind: record.content.kind,
    recipient: recipientOf(record.content),
    content: JSON.stringify(record.content),
    repeatable: Number(record.repeatable),
    is_secret: Number(record.isSecret),
    by_name: record.by,
    queued_at_ms: instantMs(record.queuedAtUtc),
    not_after_ms: msOrNull(record.notAfterUtc),
    state: record.state,
    attempts: record.attempts,
    last_error: record.lastError,
    not_before_ms: instantMs(record.notBeforeUtc),
    changed_at_ms: instantMs(record.changedAtUtc),
    sent_at_ms: msOrNull(record.sentAtUtc),
    receipt: record.receipt,
    is_emptied: Number(record.isEmptied),
    token: record.token,
    lease_until_ms: msOrNull(record.leaseUntilUtc),
    is_handed_over: Number(record.isHandedOver),
    discarded_from: record.discardedFrom,
  }
}

export function outgoingFromRow(row: OutgoingTable, networkId: string): OutgoingRecord {
  return {
    id: row.id,
    networkId,
    key: row.message_key,
    purpose: row.purpose as OutgoingPurpose,
    content: JSON.parse(row.content) as OutgoingContent,
    repeatable: row.repeatable === 1,
    isSecret: row.is_secret === 1,
    by: row.by_name,
    queuedAtUtc: evenInstant(row.queued_at_ms),
    notAfterUtc: utcOrNull(row.not_after_ms),
    state: row.state as OutgoingState,
    attempts: row.attempts,
    lastError: row.last_error,
    notBeforeUtc: evenInstant(row.not_before_ms),
    changedAtUtc: evenInstant(row.changed_at_ms),
    sentAtUtc: utcOrNull(row.sent_at_ms),
    receipt: row.receipt,
    isEmptied: row.is_emptied === 1,
    token: row.token,
    leaseUntilUtc: utcOrNull(row.lease_until_ms),
    isHandedOver: row.is_handed_over === 1,
    discardedFrom: row.discarded_from as OutgoingState | null,
  }
}

export function eventFromRow(row: OutgoingEventTable): OutgoingEvent {
  return {
    messageId: row.message_id,
    what: row.what as OutgoingEvent['what'],
    by: row.by_name,
    atUtc: evenInstant(row.at_ms),
    detail: row.detail,
  }
}

function msOrNull(text: string | null): number | null {
  return text === null ? null : instantMs(text)
}

function utcOrNull(ms: number | null): string | null {
  return ms === null ? null : evenInstant(ms)
}
