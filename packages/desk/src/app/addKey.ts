/** Make a key for a sender. The key itself is told this once. */
import type { AddKeyAsk, KeyMade } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, answered } from './answer.ts'
import { digestOf, freshSecret, startOf, wireKey } from './machine/keys.ts'

export async function addKey(
  ports: Pick<Ports, 'senders' | 'access' | 'clock' | 'newId'>,
  ask: AddKeyAsk,
  doer: Doer,
): Promise<Answer<KeyMade>> {
  const secret = freshSecret()
  const key = {
    id: ports.newId(),
    sender: ask.sender,
    scopes: [...new Set(ask.scopes)],
    start: startOf(secret),
    keyHash: digestOf(secret),
    madeAtUtc: ports.clock.nowUtc(),
    madeBy: doer.personId ?? doer.door,
    revokedAtUtc: null,
    lastUsedOn: null,
  }
  await ports.senders.addKey(key)
  await writeTrail(ports, doer, { act: 'addKey', subject: key.id })
  return answered({ key: wireKey(key), secret })
}
