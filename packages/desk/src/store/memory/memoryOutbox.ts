/** The outbox in memory, for tests and trials. Keeps every promise but that of outliving the process. */
import type { Ledger } from '../../ports/ledger.ts'
import { LedgerError } from '../../ports/ledgerError.ts'
import type { Outbox, OutgoingEvent, OutgoingState } from '../../ports/outbox.ts'
import { outboxOver } from '../outbox/outboxOver.ts'
import type { OutboxWriting } from '../outbox/outboxRows.ts'
import { type OutgoingRecord, recipientOf } from '../outbox/outgoingRecord.ts'
import { unknownNetwork } from '../unknown.ts'

interface Held {
  records: OutgoingRecord[]
  events: (OutgoingEvent & { networkId: string })[]
}

/** @param ledger  knows which networks there are */
export function openMemoryOutbox(ledger: Pick<Ledger, 'networks'>): Outbox {
  let held: Held = { records: [], events: [] }
  let turn: Promise<unknown> = Promise.resolve()
  return outboxOver({
    read: rowsOf(() => held, ledger),
    write(work) {
      const done = turn.then(async () => {
        const staged: Held = { records: [...held.records], events: [...held.events] }
        const result = await work(rowsOf(() => staged, ledger))
        held = staged
        return result
      })
      turn = done.catch(() => undefined)
      return done
    },
  })
}

function rowsOf(held: () => Held, ledger: Pick<Ledger, 'networks'>): OutboxWriting {
  const of = (networkId: string): OutgoingRecord[] => held().records.filter((record) => record.networkId === networkId)
  return {
    byId: async (networkId, id) => of(networkId).find((record) => record.id === id) ?? null,
    byToken: async (token) => held().records.find((record) => record.token === token) ?? null,
    knownKeys: async (networkId, keys) => {
      const asked = new Set(keys)
      return new Set(
        of(networkId)
          .map(({ key }) => key)
          .filter((key) => asked.has(key)),
      )
    },
    open: async (networkId, kinds, nowUtc) =>
      of(networkId).filter(
        ({ content, state, notBeforeUtc, notAfterUtc, leaseUntilUtc }) =>
          kinds.includes(content.kind) &&
          (state === 'sending'
            ? leaseUntilUtc !== null && leaseUntilUtc <= nowUtc
            : state === 'waiting' && (notBeforeUtc <= nowUtc || (notAfterUtc !== null && notAfterUtc < nowUtc))),
      ),
    toRecipient: async (networkId, recipient) =>
      of(networkId).filter(({ content }) => content.kind === 'mail' && recipientOf(content) === recipient),
    list: async (networkId, states, limit) =>
      of(networkId)
        .filter(({ state }) => states.includes(state))
        .reverse()
        .slice(0, limit),
    counts: async (networkId) => {
      const counts = new Map<OutgoingState, number>()
      for (const { state } of of(networkId)) counts.set(state, (counts.get(state) ?? 0) + 1)
      return counts
    },
    events: async (networkId, id) =>
      held()
        .events.filter((event) => event.networkId === networkId && event.messageId === id)
        .map(({ networkId: _network, ...event }) => event),
    insert: async (record) => {
      if (!(await ledger.networks()).some(({ id }) => id === record.networkId)) throw unknownNetwork(record.networkId)
      if (of(record.networkId).some(({ id }) => id === record.id)) {
        throw new LedgerError('ID_TAKEN', 'The message has an id that another message has.', 'Give each a fresh id.')
      }
      held().records.push(structuredClone(record))
    },
    update: async (record) => {
      const { records } = held()
      const at = records.findIndex(({ id, networkId }) => id === record.id && networkId === record.networkId)
      if (at >= 0) records[at] = structuredClone(record)
    },
    addEvent: async (networkId, event) => void held().events.push({ ...event, networkId }),
  }
}
