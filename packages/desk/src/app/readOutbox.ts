/** What waits to go out, what failed and what is in doubt; and whether each way out is set up. */
import type { OutboxAnswer, ReadOutboxAsk } from '@gaugewright/contract'
import type { OutgoingState } from '../ports/outbox.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { carriersNow } from './outgoing/carriersNow.ts'
import { wireOutgoing } from './outgoing/wireOutgoing.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

const needSomebody: readonly OutgoingState[] = ['waiting', 'sending', 'failed', 'in doubt']

export async function readOutbox(
  ports: Pick<Ports, 'ledger' | 'outbox' | 'outgoingSettings' | 'outgoingSecrets'>,
  ask: ReadOutboxAsk,
): Promise<Answer<OutboxAnswer>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id } = network.value
  const states = ask.state === undefined ? needSomebody : [ask.state]
  const [counts, rows, { mail, webhook, file }] = await Promise.all([
    ports.outbox.counts(id),
    ports.outbox.list(id, { states, limit: ask.limit }),
    carriersNow(ports, id),
  ])
  return answered({ counts, carriers: { mail, webhook, file }, rows: rows.map(wireOutgoing) })
}
