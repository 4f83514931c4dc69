/** An observer's own sittings. */
import type { Actor, DrillsOfPerson } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { drillSettings, drillsFrom } from './drills/readSittings.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function myDrills(
  ports: Pick<Ports, 'ledger' | 'journal' | 'clock'>,
  { actor }: { actor: Actor },
): Promise<Answer<DrillsOfPerson>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const about = `person ${actor.personId}`
  const settings = await drillSettings(ports, network.value.id)
  return answered(
    drillsFrom(about, await ports.journal.about(network.value.id, [about]), settings, ports.clock.nowUtc()),
  )
}
