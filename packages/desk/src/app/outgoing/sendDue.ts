/**
 * Send what is due, once through: claims messages, carries each, writes down how it ended. May run in several processes at
 * once; the outbox gives each message to one of them. Nothing is sent of a kind that is not set up.
 */
import type { Carried, CarryAsk } from '../../ports/carriers.ts'
import type { Claim, Ending, OutgoingKind } from '../../ports/outbox.ts'
import type { Ports } from '../../ports/ports.ts'
import { nextTryMs } from './backoff.ts'
import { type CarriersNow, carriersNow, readyKinds } from './carriersNow.ts'

export type SendPorts = Pick<
  Ports,
  'ledger' | 'outbox' | 'outgoingSettings' | 'outgoingSecrets' | 'carriers' | 'clock' | 'newId'
>

const AT_ONCE = 4
/** From the claim until it goes out. */
const LEASE_MS = 120_000
/** From there until the other side must have answered: longer than the carrier waits itself. */
const ANSWER_MS: Record<OutgoingKind, number> = { mail: 11 * 60_000, webhook: 60_000, file: 60_000 }

export interface SendAsk {
  /** All that are set up, where left out. */
  kinds?: readonly OutgoingKind[]
  /** No further message is begun. */
  signal?: AbortSignal
  /** What is under way is broken off. */
  giveUp?: AbortSignal
}

/** @returns how many were taken by the other side */
export async function sendDue(ports: SendPorts, { kinds, signal, giveUp }: SendAsk = {}): Promise<number> {
  let sent = 0
  for (const { id: networkId } of await ports.ledger.networks()) {
    for (;;) {
      if (signal?.aborted === true) return sent
      const now = await carriersNow(ports, networkId)
      const claims = await ports.outbox.claim({
        networkId,
        kinds: readyKinds(now).filter((kind) => kinds?.includes(kind) ?? true),
        nowUtc: ports.clock.nowUtc(),
        leaseMs: LEASE_MS,
        limit: AT_ONCE,
        newToken: ports.newId,
      })
      if (claims.length === 0) break
      const ends = await Promise.all(claims.map((claim) => sendOne(ports, now, claim, giveUp)))
      sent += ends.filter((isSent) => isSent).length
    }
  }
  return sent
}

async function sendOne(ports: SendPorts, now: CarriersNow, claim: Claim, giveUp?: AbortSignal): Promise<boolean> {
  const { message, token } = claim
  const { outbox, clock } = ports
  let isHandedOver = false
  const beforeTaken = async (): Promise<boolean> => {
    isHandedOver = await outbox.handOver(token, clock.nowUtc(), ANSWER_MS[message.content.kind])
    return isHandedOver
  }
  const carried = await carry(ports, now, claim, { beforeTaken, signal: giveUp }).catch(
    // A fault of ours in a carrier: what it had done by then is not known.
    (error: unknown): Carried => ({ kind: isHandedOver ? 'in doubt' : 'again', error: String(error) }),
  )
  if (carried.kind === 'stopped') return false
  await outbox.end(token, endingOf(carried, message.attempts, clock.nowUtc()), clock.nowUtc())
  return carried.kind === 'sent'
}

async function carry(
  { carriers, outgoingSecrets }: SendPorts,
  now: CarriersNow,
  { message }: Claim,
  how: Pick<CarryAsk, 'beforeTaken' | 'signal'>,
): Promise<Carried> {
  const ask = { messageId: message.id, queuedAtUtc: message.queuedAtUtc, ...how }
  const { content } = message
  switch (content.kind) {
    case 'mail':
      if (now.mailSettings === null) return { kind: 'again', error: 'mail is not set up' }
      return await carriers.mail(content, now.mailSettings, ask)
    case 'webhook':
      if (outgoingSecrets.webhookSecret === null) return { kind: 'again', error: 'no secret to sign with' }
      return await carriers.webhook(content, outgoingSecrets.webhookSecret, ask)
    case 'file':
      return await carriers.file(content, ask)
  }
}

function endingOf(carried: Exclude<Carried, { kind: 'stopped' }>, attempts: number, nowUtc: string): Ending {
  if (carried.kind === 'sent' || carried.kind === 'failed') return carried
  const nextMs = nextTryMs(attempts, Date.parse(nowUtc))
  if (nextMs === null && carried.kind === 'again') return { kind: 'failed', error: carried.error }
  const notBeforeUtc = new Date(nextMs ?? Date.parse(nowUtc) + 3_600_000).toISOString()
  return { kind: carried.kind, error: carried.error, notBeforeUtc }
}
