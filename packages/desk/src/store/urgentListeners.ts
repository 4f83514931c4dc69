import type { Urgent, UrgentEvent } from '../ports/urgent.ts'

/** Whoever wants to hear of new events at once, in this process. A listener that fails does not keep others from hearing. */
export class UrgentListeners {
  readonly #listeners = new Set<Parameters<Urgent['listen']>[0]>()

  add(listener: Parameters<Urgent['listen']>[0]): () => void {
    this.#listeners.add(listener)
    return () => void this.#listeners.delete(listener)
  }

  tell(networkId: string, event: UrgentEvent): void {
    for (const listener of [...this.#listeners]) {
      try {
        listener(networkId, event)
      } catch {
        // The event is stored whatever happens to those who listen.
      }
    }
  }
}
