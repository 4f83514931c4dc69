/** What carries a message out of the desk. An adapter tells exactly what is known of the end, and never tries twice itself. */
import type { MailSettings } from '@gaugewright/contract'
import type { FileContent, MailContent, WebhookContent } from './outbox.ts'

export type Carried =
  | { kind: 'sent'; receipt: string }
  /** Certainly not taken; may be taken later. */
  | { kind: 'again'; error: string }
  /** Certainly not taken, and never will be as it is. */
  | { kind: 'failed'; error: string }
  /** The other side had everything that it needs to take it, and gave no answer. */
  | { kind: 'in doubt'; error: string }
  /** `beforeTaken` said no, and the other side was not given all of it. */
  | { kind: 'stopped' }

export interface CarryAsk {
  /** Names the message to the other side, the same at every attempt. */
  messageId: string
  /** When it was written: the same at every attempt. */
  queuedAtUtc: string
  /** Awaited at the last moment before the other side could take the message; on false it must not get the rest. */
  beforeTaken: () => Promise<boolean>
  /** Aborted when the desk can wait no longer: what is known by then is told. */
  signal?: AbortSignal | undefined
}

export interface Carriers {
  mail: (content: MailContent, settings: MailSettings & { password: string | null }, ask: CarryAsk) => Promise<Carried>
  webhook: (content: WebhookContent, secret: string, ask: CarryAsk) => Promise<Carried>
  file: (content: FileContent, ask: CarryAsk) => Promise<Carried>
}

/** What is never written into a ledger: read from the environment when the desk starts; null where it is not there. */
export interface OutgoingSecrets {
  /** GAUGEWRIGHT_SMTP_PASSWORD */
  smtpPassword: string | null
  /** GAUGEWRIGHT_WEBHOOK_SECRET: at least 24 characters, or `whsec_` and base64. */
  webhookSecret: string | null
}
