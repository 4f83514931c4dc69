/** What is written down about people and sites, in memory, beside the ledger that it belongs to. */
import type { Journal, JournalEntry } from '../../ports/journal.ts'
import { JournalListeners } from '../journalListeners.ts'
import { evenUtc } from '../outbox/evenInstant.ts'
import { unknownNetwork } from '../unknown.ts'
import type { MemoryNetwork } from './memoryNetwork.ts'

export function memoryJournal(ledger: { networkOf(id: string): MemoryNetwork | null }): Journal {
  let entries: JournalEntry[] = []
  const listeners = new JournalListeners()
  const copy = (entry: JournalEntry): JournalEntry => structuredClone(entry)
  const find = (networkId: string, id: string) =>
    entries.find((entry) => entry.networkId === networkId && entry.id === id)
  return {
    async append(added) {
      const fresh: JournalEntry[] = []
      for (const entry of added) {
        if (ledger.networkOf(entry.networkId) === null) throw unknownNetwork(entry.networkId)
        const isSame = ({ id, networkId }: JournalEntry) => id === entry.id && networkId === entry.networkId
        if (entries.some(isSame) || fresh.some(isSame)) continue
        const body: unknown = JSON.parse(JSON.stringify(entry.body))
        fresh.push({ ...entry, body, atUtc: evenUtc(entry.atUtc), takenBack: null })
      }
      entries.push(...fresh)
      if (added[0] !== undefined) listeners.tell(added[0].networkId)
      return fresh.length
    },
    about: async (networkId, about) =>
      entries.filter((entry) => entry.networkId === networkId && about.includes(entry.about)).map(copy),
    ofKinds: async (networkId, kinds) =>
      entries.filter((entry) => entry.networkId === networkId && kinds.includes(entry.kind)).map(copy),
    entry: async (networkId, id) => {
      const found = find(networkId, id)
      return found === undefined ? null : copy(found)
    },
    async takeBack(networkId, id, by, atUtc) {
      const found = find(networkId, id)
      if (found === undefined || found.takenBack !== null) return false
      found.takenBack = { by, atUtc: evenUtc(atUtc) }
      listeners.tell(networkId)
      return true
    },
    async putBack(networkId, id) {
      const found = find(networkId, id)
      if (found === undefined || found.takenBack === null) return false
      found.takenBack = null
      listeners.tell(networkId)
      return true
    },
    async erase(networkId, about) {
      const kept = entries.filter((entry) => entry.networkId !== networkId || !about.includes(entry.about))
      const erased = entries.length - kept.length
      entries = kept
      listeners.tell(networkId)
      return erased
    },
    writtenBy: async (personId) => entries.filter(({ by }) => by === personId).map(copy),
    async forgetPerson(personId) {
      entries = entries.filter(({ about }) => about !== `person ${personId}`)
      for (const entry of entries) {
        if (entry.by === personId) entry.by = ''
        if (entry.takenBack?.by === personId) entry.takenBack.by = ''
      }
    },
    listen: (listener) => listeners.add(listener),
  }
}
