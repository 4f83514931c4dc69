/** Keys of senders in memory, for tests and trials. Keeps every promise but that of outliving the process. */
import { formatInstant } from '@gaugewright/science'
import type { SenderKey, Senders } from '../../ports/senders.ts'
import { instantMs } from '../instantMs.ts'
import { keyTaken, unknownKey } from '../unknown.ts'

export class MemorySenders implements Senders {
  readonly #keys = new Map<string, SenderKey>()

  async keys(): Promise<SenderKey[]> {
    const order = ({ madeAtUtc, id }: SenderKey): string => `${madeAtUtc}\n${id}`
    return structuredClone([...this.#keys.values()].sort((one, other) => (order(one) < order(other) ? -1 : 1)))
  }

  async addKey(key: SenderKey): Promise<void> {
    if (this.#keys.has(key.id) || (await this.keyByHash(key.keyHash)) !== null) throw keyTaken()
    this.#keys.set(key.id, { ...structuredClone(key), madeAtUtc: formatInstant(instantMs(key.madeAtUtc)) })
  }

  async keyByHash(keyHash: string): Promise<SenderKey | null> {
    return structuredClone([...this.#keys.values()].find((key) => key.keyHash === keyHash) ?? null)
  }

  async revokeKey(id: string, revokedAtUtc: string): Promise<SenderKey> {
    const key = this.#keys.get(id)
    if (key === undefined) throw unknownKey(id)
    key.revokedAtUtc ??= formatInstant(instantMs(revokedAtUtc))
    return structuredClone(key)
  }

  async usedOn(id: string, day: string): Promise<void> {
    const key = this.#keys.get(id)
    if (key !== undefined) key.lastUsedOn = day
  }
}
