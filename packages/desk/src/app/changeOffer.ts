/** What an offer says, put right: a misspelt address, a better description of the place. The first words stay in the ledger. */
import type { Candidate, ChangeOfferAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import type { Answer } from './answer.ts'
import { aboutCandidate, findCandidate } from './people/readCandidates.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function changeOffer(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: ChangeOfferAsk,
  doer: Doer,
): Promise<Answer<Candidate>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const found = await findCandidate(ports, network.value.id, ask.candidateId)
  if (!found.ok) return found
  const about = aboutCandidate(ask.candidateId)
  await ports.journal.append([
    newEntry(ports, network.value.id, about, 'offer changed', { offer: ask.offer }, { by: writer(doer) }),
  ])
  await writeTrail(ports, doer, { act: 'changeOffer', subject: ask.candidateId })
  return await findCandidate(ports, network.value.id, ask.candidateId)
}
