/** The pass mark, and whether it is required. Sittings keep the mark under which they were done. */
import type { DrillSettings, DrillsDue } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import type { Answer } from './answer.ts'
import { keepDrillFactors } from './drills/keepFactors.ts'
import { drillsDue } from './drillsDue.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function setDrills(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: DrillSettings,
  doer: Doer,
): Promise<Answer<DrillsDue>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  await ports.journal.append([
    newEntry(ports, network.value.id, 'network', 'drill settings', ask, { by: writer(doer) }),
  ])
  await keepDrillFactors(ports, network.value.id)
  await writeTrail(ports, doer, { act: 'setDrills', subject: null })
  return await drillsDue(ports)
}
