/** Up to ten thousand readings from a sender's program in one call. */
import type { BulkAnswer, SendBulkAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import type { Answer } from './answer.ts'
import { takeDelivery } from './machine/takeDelivery.ts'

/** Which call this is: whose key, which idempotency key, and the digest of what was sent. */
export interface CallIdentity {
  keyId: string
  idempotencyKey: string
  bodyHash: string
}

export async function sendBulk(
  ports: Pick<Ports, 'ledger' | 'clock' | 'newId'>,
  ask: SendBulkAsk,
  call: CallIdentity,
): Promise<Answer<BulkAnswer>> {
  return await takeDelivery(ports, {
    ...deliveryOf(call),
    rows: ask.readings.map((reading, index) => ({ row: index + 1, reading })),
    keepGood: ask.keepGood,
  })
}

export function deliveryOf({ keyId, idempotencyKey, bodyHash }: CallIdentity) {
  return { key: `call ${keyId} ${idempotencyKey}`, bodyHash, sender: keyId, name: idempotencyKey }
}
