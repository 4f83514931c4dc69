/**
 * A call to a webhook, signed as the Standard Webhooks specification says [StandardWebhooks]: HMAC-SHA256 over id, timestamp
 * and body, so that the receiver knows who sent it, when, and whether it has it already.
 */
import { createHmac } from 'node:crypto'
import type { Carried, CarryAsk } from '../ports/carriers.ts'
import type { WebhookContent } from '../ports/outbox.ts'

const SILENCE_MS = 15_000
const LONGEST = 300
/** Codes of Node with which a call certainly never reached the receiver. */
const neverReached =
  /^(ECONNREFUSED|ENOTFOUND|EAI_AGAIN|EHOSTUNREACH|ENETUNREACH|UND_ERR_CONNECT_TIMEOUT)$|CERT|UNABLE_TO_VERIFY/
/** The receiver may be at work on it though a machine between gave up. */
const doubtful = new Set([408, 502, 504])

export async function carryWebhook(
  content: WebhookContent,
  secret: string,
  ask: CarryAsk,
  nowMs: () => number = Date.now,
): Promise<Carried> {
  if (!(await ask.beforeTaken())) return { kind: 'stopped' }
  const timestampS = Math.floor(nowMs() / 1000)
  try {
    const response = await fetch(content.url, {
      method: 'POST',
      redirect: 'manual',
      signal: AbortSignal.timeout(SILENCE_MS),
      headers: {
        'content-type': 'application/json',
        'user-agent': 'gaugewright',
        'webhook-id': ask.messageId,
        'webhook-timestamp': String(timestampS),
        'webhook-signature': signWebhook(secret, { id: ask.messageId, timestampS, body: content.body }),
      },
      body: content.body,
    })
    await response.body?.cancel()
    return explainStatus(response.status)
  } catch (error) {
    const cause = (error as { cause?: { code?: string; message?: string } }).cause
    const text = (cause?.message ?? (error as Error).message).replace(/\s+/g, ' ').slice(0, LONGEST)
    return neverReached.test(cause?.code ?? '') ? { kind: 'again', error: text } : { kind: 'in doubt', error: text }
  }
}

/** @returns the value of the header `webhook-signature` */
export function signWebhook(secret: string, call: { id: string; timestampS: number; body: string }): string {
  const prefix = 'whsec_'
  const key = secret.startsWith(prefix) ? Buffer.from(secret.slice(prefix.length), 'base64') : Buffer.from(secret)
  const signed = createHmac('sha256', key).update(`${call.id}.${call.timestampS}.${call.body}`)
  return `v1,${signed.digest('base64')}`
}

function explainStatus(status: number): Carried {
  const answer = `HTTP ${status}`
  if (status >= 200 && status < 300) return { kind: 'sent', receipt: answer }
  if (doubtful.has(status)) return { kind: 'in doubt', error: answer }
  if (status === 429 || status >= 500) return { kind: 'again', error: answer }
  return { kind: 'failed', error: answer }
}
