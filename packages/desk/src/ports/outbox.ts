/**
 * Messages on their way out: mail, calls to a webhook, files for a watched folder. A message is written down durably before
 * anything goes out, taken by one sender at a time for a lease, and marked once more just before the other side could take
 * it. A sender that dies before that mark leaves the message to the next one; one that dies after it leaves it in doubt.
 * What is in doubt is never sent again by itself unless it is `repeatable`: a person decides (docs/outgoing.md).
 */
import type { Problem } from '@gaugewright/contract'

/** One recipient each, so that "sent" has one meaning. */
export interface MailContent {
  kind: 'mail'
  to: string
  subject: string
  /** Plain text, lines separated by \n. */
  text: string
  /** Further header lines, e.g. `List-Unsubscribe`. */
  headers: Readonly<Record<string, string>>
  /** Files that go with it. */
  attachments?: readonly { name: string; mediaType: string; base64: string }[]
}

export interface WebhookContent {
  kind: 'webhook'
  url: string
  /** JSON, sent byte for byte as it stands here. */
  body: string
}

export interface FileContent {
  kind: 'file'
  folder: string
  /** A plain name; the file appears whole under it, or not at all. */
  name: string
  text: string
}

export type OutgoingContent = MailContent | WebhookContent | FileContent
export type OutgoingKind = OutgoingContent['kind']

export const outgoingPurposes = ['reminder', 'sign-in', 'urgent report', 'question', 'letter', 'test'] as const
export type OutgoingPurpose = (typeof outgoingPurposes)[number]

/**
 * `in doubt`: it went out, and whether it was taken is not known. `discarded`: nobody will send it; a person may take that
 * back.
 */
export const outgoingStates = ['waiting', 'sending', 'sent', 'failed', 'in doubt', 'discarded'] as const
export type OutgoingState = (typeof outgoingStates)[number]

export interface NewOutgoing {
  id: string
  networkId: string
  /** What makes it this message and no other, e.g. `reminder 2026-05-31 person-7`: the same key twice is one message. */
  key: string
  purpose: OutgoingPurpose
  content: OutgoingContent
  /** Once in doubt it may be sent again: the other side knows it by its id, or a second copy does no harm. */
  repeatable: boolean
  /** Holds what must not be kept (a sign-in link): emptied when it was sent or discarded. */
  isSecret: boolean
  /** Who caused it: a person's name, or `rule`. */
  by: string
  queuedAtUtc: string
  /** Of no use after this instant: then it is discarded unsent. Null where it never gets stale. */
  notAfterUtc: string | null
}

export interface Outgoing extends NewOutgoing {
  state: OutgoingState
  /** How often a sender took it. */
  attempts: number
  /** What went wrong last, in one line; null when nothing did. */
  lastError: string | null
  /** Not before this instant: backoff after a failure. */
  notBeforeUtc: string
  /** When it came to its present state. */
  changedAtUtc: string
  sentAtUtc: string | null
  /** What the other side answered when it took the message, e.g. `250 2.0.0 queued as 4f2a`. */
  receipt: string | null
  /** Its content is gone for good: it was secret and is sent, or its recipient was erased. */
  isEmptied: boolean
  /** Discarded by a person, who may take that back. */
  isRestorable: boolean
}

/** A message in the hands of one sender. */
export interface Claim {
  message: Outgoing
  /** Names this claim: every further step shows it. */
  token: string
}

/** Everything that ever happened to a message, oldest first; only ever added to. */
export interface OutgoingEvent {
  messageId: string
  what:
    | 'queued'
    | 'claimed'
    | 'handing over'
    | 'sent'
    | 'put back'
    | 'failed'
    | 'in doubt'
    | 'discarded'
    | 'retried'
    | 'restored'
  by: string
  atUtc: string
  detail: string | null
}

export type Ending =
  | { kind: 'sent'; receipt: string }
  /** Certainly not taken: wait and try again. */
  | { kind: 'again'; error: string; notBeforeUtc: string }
  /** Certainly not taken, and trying again would not help. */
  | { kind: 'failed'; error: string }
  /** Perhaps taken. Goes back to waiting where the message is repeatable. */
  | { kind: 'in doubt'; error: string; notBeforeUtc: string }

export type OutboxAnswer = { ok: true; message: Outgoing } | { ok: false; problem: Problem }

/** Every method rejects with a LedgerError, and then nothing has changed. Whatever resolved is durable. */
export interface Outbox {
  /** All or nothing. A message whose key is there already is not added again, whatever became of that one. */
  queue(messages: readonly NewOutgoing[]): Promise<{ queued: number; already: number }>
  /**
   * Messages of these kinds that are due, urgent reports first, then those that somebody waits for at a screen, then the
   * oldest; each for the lease. Before that, what other senders left behind is settled: a lease that ran out puts its message
   * back, or in doubt where it had been handed over; what is too late is discarded.
   */
  claim(ask: ClaimAsk): Promise<Claim[]>
  /**
   * Said just before the other side could take the message. False where the claim is no longer good (the lease ran out, or
   * a person discarded it): then it must not be sent.
   * @param answerMs  how long the other side may take to answer before the sender is held to be dead
   */
  handOver(token: string, nowUtc: string, answerMs: number): Promise<boolean>
  /** How it ended. False where the claim was lost and nothing was recorded; a late `sent` still clears a doubt. */
  end(token: string, ending: Ending, nowUtc: string): Promise<boolean>
  /** Newest first, at most `limit`. */
  list(networkId: string, ask: { states?: readonly OutgoingState[]; limit: number }): Promise<Outgoing[]>
  counts(networkId: string): Promise<Record<OutgoingState, number>>
  message(networkId: string, id: string): Promise<Outgoing | null>
  events(networkId: string, id: string): Promise<OutgoingEvent[]>
  /** Keys among these that are there already: who was reminded. */
  knownKeys(networkId: string, keys: readonly string[]): Promise<Set<string>>
  /** From failed, in doubt or discarded back to waiting. OUTGOING_UNKNOWN, OUTGOING_STATE, OUTGOING_EMPTIED */
  retry(networkId: string, id: string, by: string, nowUtc: string): Promise<OutboxAnswer>
  /** From waiting, failed or in doubt. OUTGOING_UNKNOWN, OUTGOING_STATE */
  discard(networkId: string, id: string, by: string, nowUtc: string): Promise<OutboxAnswer>
  /** Takes a discarding by a person back, to the state before it. OUTGOING_UNKNOWN, OUTGOING_STATE, OUTGOING_EMPTIED */
  restore(networkId: string, id: string, by: string, nowUtc: string): Promise<OutboxAnswer>
  /** Every message to this address: for the export of what is held on a person. */
  toRecipient(networkId: string, address: string): Promise<Outgoing[]>
  /** Empties every message to this address and discards those not yet sent: for the erasure of a person. */
  forgetRecipient(networkId: string, address: string, by: string, nowUtc: string): Promise<number>
}

export interface ClaimAsk {
  networkId: string
  kinds: readonly OutgoingKind[]
  nowUtc: string
  leaseMs: number
  limit: number
  newToken: () => string
}
