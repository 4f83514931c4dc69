/** A person puts their own offer right, by the link in their mail. */
import type { ChangeMyOfferAsk, MyOffer } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import type { Answer } from './answer.ts'
import { myOffer } from './myOffer.ts'
import { candidateOfLink } from './people/ownLink.ts'
import { aboutCandidate } from './people/readCandidates.ts'
import { newEntry } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function changeMyOffer(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: ChangeMyOfferAsk,
): Promise<Answer<MyOffer>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const candidateId = await candidateOfLink(ports, network.value.id, ask.secret)
  if (!candidateId.ok) return candidateId
  const about = aboutCandidate(candidateId.value)
  await ports.journal.append([
    newEntry(ports, network.value.id, about, 'offer changed', { offer: ask.offer }, { by: '' }),
  ])
  return await myOffer(ports, { secret: ask.secret })
}
