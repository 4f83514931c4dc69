/**
 * Every way in which a message may change, as pure functions: the record as it will be and what is told of it, or null where
 * the step is not allowed. Both adapters keep exactly what is decided here. Instants are RFC 3339 in UTC and compare as text.
 */
import type { Ending, OutgoingContent, OutgoingEvent, OutgoingState } from '../../ports/outbox.ts'
import { emptied, type OutgoingRecord, recipientOf, type Step } from './outgoingRecord.ts'

/** In the log, what the outbox does of itself. */
const outbox = 'outbox'

/** What an earlier sender left behind, or time itself settled; null where nothing is to be settled. */
export function settle(record: OutgoingRecord, nowUtc: string): Step | null {
  if (record.state === 'sending' && record.leaseUntilUtc !== null && record.leaseUntilUtc <= nowUtc) {
    const error = 'the sender stopped before it said how it ended'
    if (!record.isHandedOver) return to(record, 'waiting', 'put back', outbox, nowUtc, { error, notBeforeUtc: nowUtc })
    return doubt(record, error, nowUtc, nowUtc)
  }
  if (record.state === 'waiting' && record.notAfterUtc !== null && record.notAfterUtc < nowUtc) {
    return discardedStep(record, null, outbox, nowUtc, 'too late to be of use')
  }
  return null
}

export function isDue(record: OutgoingRecord, nowUtc: string): boolean {
  return record.state === 'waiting' && record.notBeforeUtc <= nowUtc
}

export function claimed(record: OutgoingRecord, token: string, leaseUntilUtc: string, nowUtc: string): Step {
  const changed: OutgoingRecord = {
    ...record,
    state: 'sending',
    attempts: record.attempts + 1,
    changedAtUtc: nowUtc,
    token,
    leaseUntilUtc,
    isHandedOver: false,
  }
  return { record: changed, event: told(record, 'claimed', outbox, nowUtc, `attempt ${changed.attempts}`) }
}

export function handedOver(record: OutgoingRecord, leaseUntilUtc: string, nowUtc: string): Step | null {
  const isHeld = record.state === 'sending' && record.leaseUntilUtc !== null && record.leaseUntilUtc > nowUtc
  if (!isHeld || record.isHandedOver) return null
  return {
    record: { ...record, isHandedOver: true, leaseUntilUtc },
    event: told(record, 'handing over', outbox, nowUtc, null),
  }
}

export function ended(record: OutgoingRecord, ending: Ending, nowUtc: string): Step | null {
  if (ending.kind === 'sent') {
    // What is certain ends every doubt, whatever was done about it meanwhile.
    if (!record.isHandedOver || record.state === 'sent') return null
    const content = record.isSecret ? emptied(record.content, { recipient: true }) : record.content
    const isEmptied = record.isEmptied || record.isSecret
    const kept = { ...record, content, isEmptied, sentAtUtc: nowUtc, receipt: ending.receipt, discardedFrom: null }
    return to(kept, 'sent', 'sent', outbox, nowUtc, { error: null, detail: ending.receipt })
  }
  if (record.state !== 'sending') return null
  const { error } = ending
  switch (ending.kind) {
    case 'again':
      return to(record, 'waiting', 'put back', outbox, nowUtc, { error, notBeforeUtc: ending.notBeforeUtc })
    case 'failed':
      return to(record, 'failed', 'failed', outbox, nowUtc, { error })
    case 'in doubt':
      return doubt(record, error, ending.notBeforeUtc, nowUtc)
  }
}

export function retried(record: OutgoingRecord, by: string, nowUtc: string): Step | null {
  const may: readonly OutgoingState[] = ['failed', 'in doubt', 'discarded']
  if (!may.includes(record.state) || record.isEmptied) return null
  const kept = { ...record, discardedFrom: null, notAfterUtc: null }
  return to(kept, 'waiting', 'retried', by, nowUtc, { error: record.lastError, notBeforeUtc: nowUtc })
}

export function discarded(record: OutgoingRecord, by: string, nowUtc: string): Step | null {
  const may: readonly OutgoingState[] = ['waiting', 'failed', 'in doubt']
  return may.includes(record.state) ? discardedStep(record, record.state, by, nowUtc, null) : null
}

export function restored(record: OutgoingRecord, by: string, nowUtc: string): Step | null {
  if (record.state !== 'discarded' || record.discardedFrom === null || record.isEmptied) return null
  const kept = { ...record, discardedFrom: null }
  return to(kept, record.discardedFrom, 'restored', by, nowUtc, { error: record.lastError })
}

/** The recipient is erased: nothing of the message stays but that there was one. */
export function forgotten(record: OutgoingRecord, by: string, nowUtc: string): Step {
  const isOver = record.state === 'sent' || record.state === 'discarded'
  const kept: OutgoingRecord = {
    ...record,
    key: `forgotten ${record.id}`,
    content: emptied(record.content, { recipient: false }),
    isEmptied: true,
    lastError: null,
    receipt: null,
    discardedFrom: null,
  }
  return to(kept, isOver ? record.state : 'discarded', 'discarded', by, nowUtc, {
    error: null,
    detail: 'the recipient was erased',
  })
}

function doubt(record: OutgoingRecord, error: string, notBeforeUtc: string, nowUtc: string): Step {
  if (record.repeatable) return to(record, 'waiting', 'put back', outbox, nowUtc, { error, notBeforeUtc })
  return to(record, 'in doubt', 'in doubt', outbox, nowUtc, { error })
}

function discardedStep(
  record: OutgoingRecord,
  from: OutgoingState | null,
  by: string,
  nowUtc: string,
  detail: string | null,
): Step {
  // Nobody can take back what became too late: then a secret has no reason to be kept.
  const isEmptied = record.isEmptied || (from === null && record.isSecret)
  const content = isEmptied ? emptied(record.content, { recipient: true }) : record.content
  return to({ ...record, content, isEmptied, discardedFrom: from }, 'discarded', 'discarded', by, nowUtc, {
    error: detail ?? record.lastError,
    detail,
  })
}

function to(
  record: OutgoingRecord,
  state: OutgoingState,
  what: OutgoingEvent['what'],
  by: string,
  nowUtc: string,
  more: { error: string | null; notBeforeUtc?: string; detail?: string | null },
): Step {
  return {
    record: {
      ...record,
      state,
      lastError: more.error,
      notBeforeUtc: more.notBeforeUtc ?? record.notBeforeUtc,
      changedAtUtc: nowUtc,
      leaseUntilUtc: null,
    },
    event: told(record, what, by, nowUtc, more.detail === undefined ? more.error : more.detail),
  }
}

/** What is told stays for good, and so never names the recipient. */
function told(
  { id, content }: OutgoingRecord,
  what: OutgoingEvent['what'],
  by: string,
  atUtc: string,
  detail: string | null,
): OutgoingEvent {
  return { messageId: id, what, by, atUtc, detail: detail === null ? null : withoutAddress(detail, content) }
}

function withoutAddress(text: string, content: OutgoingContent): string {
  if (content.kind !== 'mail' || content.to === '') return text
  const literal = recipientOf(content).replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
  return text.replace(new RegExp(literal, 'gi'), '…')
}
