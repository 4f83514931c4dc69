/** Revoke a sender's key: it opens nothing from now on, and stays in the list. */
import type { Keys, RevokeKeyAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { listKeys } from './listKeys.ts'

export async function revokeKey(
  ports: Pick<Ports, 'senders' | 'access' | 'clock' | 'newId'>,
  ask: RevokeKeyAsk,
  doer: Doer,
): Promise<Answer<Keys>> {
  if (!(await ports.senders.keys()).some(({ id }) => id === ask.id)) {
    return refused('KEY_UNKNOWN', `no key has the id "${ask.id}"`, 'Look at "gaugewright key list".')
  }
  await ports.senders.revokeKey(ask.id, ports.clock.nowUtc())
  await writeTrail(ports, doer, { act: 'revokeKey', subject: ask.id })
  return await listKeys(ports)
}
