/** Every sitting of a person, those as a candidate too. */
import type { DrillsAsk, DrillsOfPerson } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { drillSettings, drillsFrom } from './drills/readSittings.ts'
import { personBehind } from './people/personBehind.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function drillsOfPerson(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outgoingSettings' | 'clock'>,
  { about }: DrillsAsk,
): Promise<Answer<DrillsOfPerson>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const person = await personBehind(ports, network.value.id, about)
  if (!person.ok) return person
  const settings = await drillSettings(ports, network.value.id)
  const entries = await ports.journal.about(network.value.id, person.value.about)
  return answered(drillsFrom(about, entries, settings, ports.clock.nowUtc()))
}
