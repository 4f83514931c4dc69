import type { NewOutgoing, Outgoing, OutgoingContent, OutgoingEvent, OutgoingState } from '../../ports/outbox.ts'

/** A message as it is kept, with what only the outbox itself needs to know. */
export interface OutgoingRecord extends Omit<Outgoing, 'isRestorable'> {
  /** The last claim, kept until the next one, so that a late "sent" is still believed. */
  token: string | null
  leaseUntilUtc: string | null
  /** Under the last claim the other side could have taken it. */
  isHandedOver: boolean
  /** What it was before a person discarded it; null where it became too late or was forgotten. */
  discardedFrom: OutgoingState | null
}

export interface Step {
  record: OutgoingRecord
  event: OutgoingEvent
}

export function queuedRecord(message: NewOutgoing): Step {
  const record: OutgoingRecord = {
    ...message,
    state: 'waiting',
    attempts: 0,
    lastError: null,
    notBeforeUtc: message.queuedAtUtc,
    changedAtUtc: message.queuedAtUtc,
    sentAtUtc: null,
    receipt: null,
    isEmptied: false,
    token: null,
    leaseUntilUtc: null,
    isHandedOver: false,
    discardedFrom: null,
  }
  return {
    record,
    event: { messageId: message.id, what: 'queued', by: message.by, atUtc: message.queuedAtUtc, detail: null },
  }
}

/** What the world may see of it. */
export function outgoingFrom(record: OutgoingRecord): Outgoing {
  const { token: _token, leaseUntilUtc: _lease, isHandedOver: _handed, discardedFrom: _before, ...message } = record
  return { ...message, isRestorable: record.discardedFrom !== null && !record.isEmptied }
}

/** Whom a message is for: a mail address in lower case, a webhook's address, a folder. */
export function recipientOf(content: OutgoingContent): string {
  switch (content.kind) {
    case 'mail':
      return content.to.trim().toLowerCase()
    case 'webhook':
      return content.url
    case 'file':
      return content.folder
  }
}

export function emptied(content: OutgoingContent, keep: { recipient: boolean }): OutgoingContent {
  switch (content.kind) {
    case 'mail':
      return { kind: 'mail', to: keep.recipient ? content.to : '', subject: '', text: '', headers: {} }
    case 'webhook':
      return { kind: 'webhook', url: content.url, body: '' }
    case 'file':
      return { ...content, text: '' }
  }
}
