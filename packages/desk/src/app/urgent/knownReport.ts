import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { firstNetwork } from './firstNetwork.ts'
import { foldEvents, type ReportNow } from './foldEvents.ts'

/** A report of this desk by its first id, as it stands. */
export async function knownReport(
  ports: Pick<Ports, 'ledger' | 'urgent'>,
  reportId: string,
): Promise<Answer<{ networkId: string; now: ReportNow }>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const now = foldEvents(await ports.urgent.eventsOf(network.value.id, reportId))
  if (now !== null) return answered({ networkId: network.value.id, now })
  return refused('URGENT_UNKNOWN', `the urgent report "${reportId}"`, 'Look at the list again.')
}
