/** What the public page says, for the coordinator who sets it, with who set it when. */
import type { OfferPageSettings } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { ofKind } from './people/journalBody.ts'
import { namesOfPeople } from './people/nameOf.ts'
import { offerPageWords } from './people/offerPageWords.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function readOfferPage(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal'>,
): Promise<Answer<OfferPageSettings>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const nameOf = await namesOfPeople(ports)
  const entries = ofKind(await ports.journal.ofKinds(network.value.id, ['offer page']), 'offer page')
  return answered({
    ...(await offerPageWords(ports, network.value.id)),
    versions: entries.map(({ entry }) => ({ id: entry.id, atUtc: entry.atUtc, by: nameOf(entry.by) })),
  })
}
