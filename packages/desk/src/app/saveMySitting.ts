/** A candidate's sitting of drills, by the link in their mail. */
import type { DrillsOfPerson, MySittingAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import type { Answer } from './answer.ts'
import { keepSitting } from './drills/keepSitting.ts'
import { candidateOfLink } from './people/ownLink.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function saveMySitting(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: MySittingAsk,
): Promise<Answer<DrillsOfPerson>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const candidateId = await candidateOfLink(ports, network.value.id, ask.secret)
  if (!candidateId.ok) return candidateId
  return await keepSitting(ports, network.value.id, { candidateId: candidateId.value }, ask)
}
