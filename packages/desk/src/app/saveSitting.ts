/** An observer's sitting of drills, from their page. */
import type { Actor, DrillsOfPerson, SittingAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import type { Answer } from './answer.ts'
import { keepSitting } from './drills/keepSitting.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function saveSitting(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: SittingAsk & { actor: Actor },
): Promise<Answer<DrillsOfPerson>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  return await keepSitting(ports, network.value.id, { personId: ask.actor.personId }, ask)
}
