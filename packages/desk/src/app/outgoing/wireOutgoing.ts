import type { OutgoingRow } from '@gaugewright/contract'
import type { Outgoing } from '../../ports/outbox.ts'

/** Without its text: what a list shows. */
export function wireOutgoing(message: Outgoing): OutgoingRow {
  const { content, state, isEmptied } = message
  const isOver = state === 'failed' || state === 'in doubt'
  const may: OutgoingRow['may'] = []
  if ((isOver || state === 'discarded') && !isEmptied) may.push('retry')
  if (isOver || state === 'waiting') may.push('discard')
  if (state === 'discarded' && message.isRestorable) may.push('restore')
  return {
    id: message.id,
    purpose: message.purpose,
    kind: content.kind,
    recipient: content.kind === 'mail' ? content.to : content.kind === 'webhook' ? content.url : content.folder,
    subject: content.kind === 'mail' ? content.subject : content.kind === 'file' ? content.name : '',
    state,
    attempts: message.attempts,
    lastError: message.lastError,
    by: message.by,
    queuedAtUtc: message.queuedAtUtc,
    changedAtUtc: message.changedAtUtc,
    nextTryAtUtc: state === 'waiting' ? message.notBeforeUtc : null,
    notAfterUtc: message.notAfterUtc,
    may,
  }
}
