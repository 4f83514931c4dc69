/**
 * Keeps robots away from the public page without asking anybody outside: a ticket signed by the desk that says when the
 * page was opened, and a puzzle bound to it. People take longer than robots to fill a form, and a phone does once what a
 * flood would have to do ten thousand times. A ticket serves once.
 */
import { createHash, createHmac, timingSafeEqual } from 'node:crypto'

export const ZERO_BITS = 16
const SOONEST_MS = 3_000
const LATEST_MS = 24 * 3_600_000

/** @param secret  of the network; `nonce` makes two tickets of one instant differ */
export function signTicket(secret: string, networkId: string, issuedMs: number, nonce: string): string {
  const words = `${issuedMs}.${nonce}`
  return `${words}.${signature(secret, networkId, words)}`
}

export type TicketFault = 'forged' | 'too soon' | 'too late' | 'puzzle'

/** @returns what is wrong with it, or null */
export function ticketFault(
  secret: string,
  networkId: string,
  { ticket, nonce }: { ticket: string; nonce: string },
  nowMs: number,
): TicketFault | null {
  const [issued = '', mark = '', given = '', ...more] = ticket.split('.')
  const own = Buffer.from(signature(secret, networkId, `${issued}.${mark}`))
  const theirs = Buffer.from(given)
  if (more.length > 0 || own.length !== theirs.length || !timingSafeEqual(own, theirs)) return 'forged'
  const ageMs = nowMs - Number(issued)
  if (!(ageMs >= SOONEST_MS)) return 'too soon'
  if (ageMs > LATEST_MS) return 'too late'
  return zeroBitsOf(`${ticket}.${nonce}`) >= ZERO_BITS ? null : 'puzzle'
}

/** Leading zero bits of the SHA-256 of a text. */
export function zeroBitsOf(text: string): number {
  let bits = 0
  for (const byte of createHash('sha256').update(text).digest()) {
    if (byte !== 0) return bits + Math.clz32(byte) - 24
    bits += 8
  }
  return bits
}

/** Tickets that were used, for as long as they could be shown again; in memory, since a restart costs a robot the same work. */
export class UsedTickets {
  readonly #until = new Map<string, number>()

  /** @returns false where it was used before */
  use(ticket: string, nowMs: number): boolean {
    for (const [old, untilMs] of this.#until) {
      if (untilMs > nowMs) break
      this.#until.delete(old)
    }
    if (this.#until.has(ticket)) return false
    this.#until.set(ticket, nowMs + LATEST_MS)
    return true
  }
}

function signature(secret: string, networkId: string, words: string): string {
  return createHmac('sha256', secret)
    .update(JSON.stringify(['offer ticket', networkId, words]))
    .digest('base64url')
}
