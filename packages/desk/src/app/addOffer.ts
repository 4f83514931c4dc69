/** An offer that came by telephone, mail or word of mouth, written down by hand. The same id twice is one offer. */
import type { AddOfferAsk, Candidate } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import type { Answer } from './answer.ts'
import { aboutCandidate, findCandidate } from './people/readCandidates.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function addOffer(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: AddOfferAsk,
  doer: Doer,
): Promise<Answer<Candidate>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const id = ask.id ?? ports.newId()
  const door = doer.door === 'command line' ? ('command line' as const) : ('desk' as const)
  const entry = newEntry(
    ports,
    network.value.id,
    aboutCandidate(id),
    'offer',
    { offer: ask.offer, door },
    {
      by: writer(doer),
      id: `offer ${id}`,
    },
  )
  if ((await ports.journal.append([entry])) > 0) await writeTrail(ports, doer, { act: 'addOffer', subject: id })
  return await findCandidate(ports, network.value.id, id)
}
