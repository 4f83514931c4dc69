/** Asks somebody for a sitting of drills; it is shown on their page, and a letter can go with it. */
import type { DrillsAsk, DrillsOfPerson } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import type { Answer } from './answer.ts'
import { drillsOfPerson } from './drillsOfPerson.ts'
import { personBehind } from './people/personBehind.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function askRefresher(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outgoingSettings' | 'clock' | 'newId'>,
  { about }: DrillsAsk,
  doer: Doer,
): Promise<Answer<DrillsOfPerson>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const person = await personBehind(ports, network.value.id, about)
  if (!person.ok) return person
  await ports.journal.append([newEntry(ports, network.value.id, about, 'refresher asked', {}, { by: writer(doer) })])
  await writeTrail(ports, doer, { act: 'askRefresher', subject: about })
  return await drillsOfPerson(ports, { about })
}
