/** The outbox over any place for its records: what may happen is in steps.ts, where it is kept behind OutboxRows. */
import {
  type Claim,
  type ClaimAsk,
  type Ending,
  type NewOutgoing,
  type Outbox,
  type OutboxAnswer,
  type Outgoing,
  type OutgoingEvent,
  type OutgoingState,
  outgoingStates,
} from '../../ports/outbox.ts'
import { instantMs } from '../instantMs.ts'
import { evenInstant, evenUtc } from './evenInstant.ts'
import type { OutboxRows, OutboxWriting } from './outboxRows.ts'
import { type OutgoingRecord, outgoingFrom, queuedRecord, recipientOf, type Step } from './outgoingRecord.ts'
import { claimed, discarded, ended, forgotten, handedOver, isDue, restored, retried, settle } from './steps.ts'

export function outboxOver(rows: OutboxRows): Outbox {
  return new OutboxOver(rows)
}

class OutboxOver implements Outbox {
  readonly #rows: OutboxRows

  constructor(rows: OutboxRows) {
    this.#rows = rows
  }

  async queue(messages: readonly NewOutgoing[]): Promise<{ queued: number; already: number }> {
    return await this.#rows.write(async (rows) => {
      let queued = 0
      for (const message of messages) {
        const known = await rows.knownKeys(message.networkId, [message.key])
        if (known.size > 0) continue
        const queuedAtUtc = evenUtc(message.queuedAtUtc)
        const notAfterUtc = message.notAfterUtc === null ? null : evenUtc(message.notAfterUtc)
        const { record, event } = queuedRecord({ ...message, queuedAtUtc, notAfterUtc })
        await rows.insert(record)
        await rows.addEvent(message.networkId, event)
        queued++
      }
      return { queued, already: messages.length - queued }
    })
  }

  async claim(ask: ClaimAsk): Promise<Claim[]> {
    const nowUtc = evenUtc(ask.nowUtc)
    const leaseUntilUtc = evenInstant(instantMs(nowUtc) + ask.leaseMs)
    // A look that finds nothing costs no turn at writing.
    if ((await this.#rows.read.open(ask.networkId, ask.kinds, nowUtc)).length === 0) return []
    return await this.#rows.write(async (rows) => {
      const claims: Claim[] = []
      const open = await rows.open(ask.networkId, ask.kinds, nowUtc)
      for (const found of open.sort((one, other) => rankOf(one) - rankOf(other))) {
        const settled = settle(found, nowUtc)
        if (settled !== null) await keep(rows, settled)
        const record = settled?.record ?? found
        if (claims.length >= ask.limit || !isDue(record, nowUtc)) continue
        const token = ask.newToken()
        const step = claimed(record, token, leaseUntilUtc, nowUtc)
        await keep(rows, step)
        claims.push({ message: outgoingFrom(step.record), token })
      }
      return claims
    })
  }

  async handOver(token: string, nowUtc: string, answerMs: number): Promise<boolean> {
    const leaseUntilUtc = evenInstant(instantMs(nowUtc) + answerMs)
    return await this.#byToken(token, (record) => handedOver(record, leaseUntilUtc, evenUtc(nowUtc)))
  }

  async end(token: string, ending: Ending, nowUtc: string): Promise<boolean> {
    const even = 'notBeforeUtc' in ending ? { ...ending, notBeforeUtc: evenUtc(ending.notBeforeUtc) } : ending
    return await this.#byToken(token, (record) => ended(record, even, evenUtc(nowUtc)))
  }

  async list(networkId: string, ask: { states?: readonly OutgoingState[]; limit: number }): Promise<Outgoing[]> {
    const found = await this.#rows.read.list(networkId, ask.states ?? outgoingStates, ask.limit)
    return found.map(outgoingFrom)
  }

  async counts(networkId: string): Promise<Record<OutgoingState, number>> {
    const found = await this.#rows.read.counts(networkId)
    return Object.fromEntries(outgoingStates.map((state) => [state, found.get(state) ?? 0])) as Record<
      OutgoingState,
      number
    >
  }

  async message(networkId: string, id: string): Promise<Outgoing | null> {
    const record = await this.#rows.read.byId(networkId, id)
    return record === null ? null : outgoingFrom(record)
  }

  async events(networkId: string, id: string): Promise<OutgoingEvent[]> {
    return await this.#rows.read.events(networkId, id)
  }

  async knownKeys(networkId: string, keys: readonly string[]): Promise<Set<string>> {
    return await this.#rows.read.knownKeys(networkId, keys)
  }

  async retry(networkId: string, id: string, by: string, nowUtc: string): Promise<OutboxAnswer> {
    return await this.#byPerson(networkId, id, (record) => retried(record, by, evenUtc(nowUtc)))
  }

  async discard(networkId: string, id: string, by: string, nowUtc: string): Promise<OutboxAnswer> {
    return await this.#byPerson(networkId, id, (record) => discarded(record, by, evenUtc(nowUtc)))
  }

  async restore(networkId: string, id: string, by: string, nowUtc: string): Promise<OutboxAnswer> {
    return await this.#byPerson(networkId, id, (record) => restored(record, by, evenUtc(nowUtc)))
  }

  async toRecipient(networkId: string, address: string): Promise<Outgoing[]> {
    const recipient = recipientOf({ kind: 'mail', to: address, subject: '', text: '', headers: {} })
    return (await this.#rows.read.toRecipient(networkId, recipient)).map(outgoingFrom)
  }

  async forgetRecipient(networkId: string, address: string, by: string, nowUtc: string): Promise<number> {
    const recipient = recipientOf({ kind: 'mail', to: address, subject: '', text: '', headers: {} })
    return await this.#rows.write(async (rows) => {
      const found = await rows.toRecipient(networkId, recipient)
      for (const record of found) await keep(rows, forgotten(record, by, evenUtc(nowUtc)))
      return found.length
    })
  }

  async #byToken(token: string, step: (record: OutgoingRecord) => Step | null): Promise<boolean> {
    return await this.#rows.write(async (rows) => {
      const record = await rows.byToken(token)
      const done = record === null ? null : step(record)
      if (done === null) return false
      await keep(rows, done)
      return true
    })
  }

  async #byPerson(networkId: string, id: string, step: (record: OutgoingRecord) => Step | null): Promise<OutboxAnswer> {
    return await this.#rows.write(async (rows): Promise<OutboxAnswer> => {
      const record = await rows.byId(networkId, id)
      if (record === null) return refusedUnknown(id)
      const done = step(record)
      if (done === null) return refusedIn(record)
      await keep(rows, done)
      return { ok: true, message: outgoingFrom(done.record) }
    })
  }
}

/** A person waits for these at a screen: before any reminder, however old. */
function rankOf({ purpose }: OutgoingRecord): number {
  return purpose === 'urgent report' ? 0 : purpose === 'sign-in' || purpose === 'test' ? 1 : 2
}

async function keep(rows: OutboxWriting, { record, event }: Step): Promise<void> {
  await rows.update(record)
  await rows.addEvent(record.networkId, event)
}

function refusedUnknown(id: string): OutboxAnswer {
  const advice = 'Look at the list again: gaugewright outbox.'
  return { ok: false, problem: { code: 'OUTGOING_UNKNOWN', seen: `no message "${id}"`, advice } }
}

function refusedIn(record: OutgoingRecord): OutboxAnswer {
  if (record.isEmptied) {
    const advice = 'Make a new message: its content was removed for good.'
    return { ok: false, problem: { code: 'OUTGOING_EMPTIED', seen: `message "${record.id}" is empty`, advice } }
  }
  const seen = `message "${record.id}" is ${record.state}`
  const advice = 'Look at the list again: somebody or the sender has changed it.'
  return { ok: false, problem: { code: 'OUTGOING_STATE', seen, advice } }
}
