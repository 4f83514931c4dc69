/** The key that a sender's program shows, where it opens what is asked. */
import type { KeyScope } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import type { SenderKey } from '../ports/senders.ts'
import { type Answer, answered, refused } from './answer.ts'
import { digestOf } from './machine/keys.ts'

/** @param header  `Bearer …`, as it came */
export async function keyBehind(
  ports: Pick<Ports, 'senders' | 'clock'>,
  header: string | undefined,
  scope: KeyScope | null,
): Promise<Answer<SenderKey>> {
  const secret = /^Bearer +([A-Za-z0-9_-]{20,200})$/i.exec(header ?? '')?.[1]
  if (secret === undefined) {
    return refused('KEY_MISSING', 'no key', 'Send the header "Authorization: Bearer" with the key that you were given.')
  }
  const key = await ports.senders.keyByHash(digestOf(secret))
  // A key that never was and one that was revoked are answered alike.
  if (key === null || key.revokedAtUtc !== null) {
    return refused('KEY_REFUSED', 'a key that opens nothing here', 'Ask the coordinator of the network for a key.')
  }
  if (scope !== null && !key.scopes.includes(scope)) {
    return refused('KEY_SCOPE', `a key for ${key.scopes.join(', ')}; this needs ${scope}`, 'Ask for a key that may.')
  }
  const today = ports.clock.nowUtc().slice(0, 10)
  if (key.lastUsedOn !== today) await ports.senders.usedOn(key.id, today)
  return answered(key)
}
