/** A person's own offer, for whoever holds the link in their mail: which shows that the address is theirs. */

import type { MyOffer, MyOfferAsk } from '@gaugewright/contract'
import { isDrawn } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { drillSettings } from './drills/readSittings.ts'
import { standing } from './people/journalBody.ts'
import { candidateOfLink } from './people/ownLink.ts'
import { aboutCandidate, findCandidate } from './people/readCandidates.ts'
import { newEntry } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function myOffer(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  { secret }: MyOfferAsk,
): Promise<Answer<MyOffer>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id: networkId, name, unit } = network.value
  const candidateId = await candidateOfLink(ports, networkId, secret)
  if (!candidateId.ok) return candidateId
  const about = aboutCandidate(candidateId.value)
  const confirmed = newEntry(ports, networkId, about, 'address confirmed', {}, { by: '', id: `${about} confirmed` })
  await ports.journal.append([confirmed])
  const found = await findCandidate(ports, networkId, candidateId.value)
  if (!found.ok) return found
  const { offer, state, sinceUtc } = found.value
  const surveys = standing(await ports.journal.about(networkId, [about]), 'survey')
  return answered({
    network: name,
    unit,
    offer,
    state,
    sinceUtc,
    isAddressConfirmed: true,
    passMark: (await drillSettings(ports, networkId)).passMark,
    plan: surveys.map(({ body }) => body.plan).findLast(isDrawn) ?? null,
    photoCount: surveys.reduce((count, { body }) => count + body.photos.length, 0),
  })
}
