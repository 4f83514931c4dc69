/** All keys of senders, revoked ones too, without the keys themselves. */
import type { Keys } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { wireKey } from './machine/keys.ts'

export async function listKeys(ports: Pick<Ports, 'senders'>): Promise<Answer<Keys>> {
  return answered({ keys: (await ports.senders.keys()).map(wireKey) })
}
