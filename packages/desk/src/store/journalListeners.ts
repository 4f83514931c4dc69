/** Whoever wants to hear that something was written down, in this process. A listener that fails keeps no other from hearing. */
export class JournalListeners {
  readonly #listeners = new Set<(networkId: string) => void>()

  add(listener: (networkId: string) => void): () => void {
    this.#listeners.add(listener)
    return () => void this.#listeners.delete(listener)
  }

  tell(networkId: string): void {
    for (const listener of [...this.#listeners]) {
      try {
        listener(networkId)
      } catch {
        // What was written down is durable whatever happens to those who listen.
      }
    }
  }
}
