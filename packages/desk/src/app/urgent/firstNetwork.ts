import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'

/** The network of this desk; a problem where the ledger is empty. */
export async function firstNetwork(ports: Pick<Ports, 'ledger'>): Promise<Answer<NetworkSettings>> {
  const network = (await ports.ledger.networks())[0]
  if (network !== undefined) return answered(network)
  return refused(
    'LEDGER_EMPTY',
    'the ledger holds no network yet',
    'Run "gaugewright import" with a file of gauges, or "gaugewright demo".',
  )
}
