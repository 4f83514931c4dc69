/** A small cache that forgets what was used longest ago. */
export class RecentlyUsed<T> {
  readonly #limit: number
  readonly #entries = new Map<string, T>()

  constructor(limit: number) {
    this.#limit = limit
  }

  get(key: string): T | undefined {
    const value = this.#entries.get(key)
    if (value === undefined) return undefined
    this.#entries.delete(key)
    this.#entries.set(key, value)
    return value
  }

  set(key: string, value: T): void {
    this.#entries.delete(key)
    this.#entries.set(key, value)
    if (this.#entries.size <= this.#limit) return
    const oldest = this.#entries.keys().next().value
    if (oldest !== undefined) this.#entries.delete(oldest)
  }

  delete(key: string): void {
    this.#entries.delete(key)
  }
}
