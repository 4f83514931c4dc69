/** A person decides about a message: send it again, discard it, or take a discarding back. */
import type { OutgoingRow, SettleOutgoingAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { wireOutgoing } from './outgoing/wireOutgoing.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function settleOutgoing(
  ports: Pick<Ports, 'ledger' | 'outbox' | 'clock'>,
  { id, act, by }: SettleOutgoingAsk,
): Promise<Answer<OutgoingRow>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const settled = await ports.outbox[act](network.value.id, id, by, ports.clock.nowUtc())
  return settled.ok ? answered(wireOutgoing(settled.message)) : settled
}
