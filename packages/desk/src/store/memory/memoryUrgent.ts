import { formatInstant } from '@gaugewright/science'
import type { NewFiling, NewUrgentEvent, Urgent, UrgentEvent, UrgentSettingsSet } from '../../ports/urgent.ts'
import { instantMs } from '../instantMs.ts'
import { UrgentListeners } from '../urgentListeners.ts'
import { filingContent, urgentEventIdTaken, urgentIdTaken, urgentUnknown } from '../urgentTrouble.ts'

/** Urgent reports for as long as the process lives. Knows every network that it is asked about. */
class MemoryUrgent implements Urgent {
  readonly #events = new Map<string, UrgentEvent[]>()
  readonly #settings = new Map<string, UrgentSettingsSet[]>()
  readonly #listeners = new UrgentListeners()

  async file(networkId: string, filing: NewFiling): Promise<{ event: UrgentEvent; already: boolean }> {
    const before = this.#of(networkId).find(({ id }) => id === filing.id)
    if (before !== undefined) {
      if (before.what !== 'filed' || filingContent(before.report) !== filingContent(filing.report)) {
        throw urgentIdTaken(filing.id)
      }
      return { event: structuredClone(before), already: true }
    }
    return { event: this.#add(networkId, filing), already: false }
  }

  async append(networkId: string, event: NewUrgentEvent): Promise<UrgentEvent> {
    const events = this.#of(networkId)
    if (!events.some(({ reportId }) => reportId === event.reportId)) throw urgentUnknown(event.reportId)
    if (events.some(({ id }) => id === event.id)) throw urgentEventIdTaken()
    return this.#add(networkId, event)
  }

  async eventsAfter(networkId: string, after: number, limit: number): Promise<UrgentEvent[]> {
    return structuredClone(this.#of(networkId).slice(after, after + limit))
  }

  async event(networkId: string, id: string): Promise<UrgentEvent | null> {
    return structuredClone(this.#of(networkId).find((event) => event.id === id) ?? null)
  }

  async eventsOf(networkId: string, reportId: string): Promise<UrgentEvent[]> {
    return structuredClone(this.#of(networkId).filter((event) => event.reportId === reportId))
  }

  async eventsSince(networkId: string, sinceUtc: string): Promise<UrgentEvent[]> {
    const sinceMs = instantMs(sinceUtc)
    const events = this.#of(networkId)
    const undone = new Set(events.map((event) => (event.what === 'undone' ? event.target : '')))
    const handled = new Set<string>()
    const recent = new Set<string>()
    for (const event of events) {
      const isAct = event.what !== 'filed' && event.what !== 'undone'
      if (isAct && !undone.has(event.id)) handled.add(event.reportId)
      if (event.what === 'filed' && instantMs(event.atUtc) >= sinceMs) recent.add(event.reportId)
    }
    return structuredClone(events.filter(({ reportId }) => recent.has(reportId) || !handled.has(reportId)))
  }

  async lastNumber(networkId: string): Promise<number> {
    return this.#of(networkId).length
  }

  async settings(networkId: string): Promise<UrgentSettingsSet[]> {
    return structuredClone(this.#settings.get(networkId) ?? [])
  }

  async appendSettings(networkId: string, set: UrgentSettingsSet): Promise<void> {
    const settings = this.#settings.get(networkId) ?? []
    settings.push({ ...structuredClone(set), atUtc: formatInstant(instantMs(set.atUtc)) })
    this.#settings.set(networkId, settings)
  }

  listen(listener: (networkId: string, event: UrgentEvent) => void): () => void {
    return this.#listeners.add(listener)
  }

  async forgetPerson(personId: string): Promise<number> {
    const own = [...this.#events.values()].flat().filter(({ byPersonId }) => byPersonId === personId)
    for (const event of own) {
      event.by = ''
      event.byPersonId = null
      if (event.what === 'filed') event.report.by = ''
    }
    return own.length
  }

  async byPerson(personId: string): Promise<UrgentEvent[]> {
    return structuredClone([...this.#events.values()].flat().filter(({ byPersonId }) => byPersonId === personId))
  }

  #of(networkId: string): UrgentEvent[] {
    const events = this.#events.get(networkId) ?? []
    this.#events.set(networkId, events)
    return events
  }

  #add(networkId: string, event: NewFiling | NewUrgentEvent): UrgentEvent {
    const events = this.#of(networkId)
    const atUtc = formatInstant(instantMs(event.atUtc))
    const added = { ...structuredClone(event), atUtc, number: events.length + 1 }
    events.push(added)
    this.#listeners.tell(networkId, structuredClone(added))
    return structuredClone(added)
  }
}

export function openMemoryUrgent(): Urgent {
  return new MemoryUrgent()
}
