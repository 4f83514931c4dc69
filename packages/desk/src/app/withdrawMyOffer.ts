/** A person takes their own offer back: it is erased, with everything about it, unless they hold a gauge already. */
import type { MyOfferAsk, OfferGone } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { eraseCandidate } from './people/eraseCandidate.ts'
import { candidateOfLink } from './people/ownLink.ts'
import { findCandidate } from './people/readCandidates.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function withdrawMyOffer(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outbox' | 'photos' | 'clock'>,
  { secret }: MyOfferAsk,
): Promise<Answer<OfferGone>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const candidateId = await candidateOfLink(ports, network.value.id, secret)
  if (!candidateId.ok) return candidateId
  const found = await findCandidate(ports, network.value.id, candidateId.value)
  if (!found.ok) return found
  if (found.value.gauge !== null) {
    return refused(
      'OFFER_HAS_GAUGE',
      `the gauge ${found.value.gauge.code} is with you`,
      'Write to the network: it will arrange for the gauge, and erase what it holds.',
    )
  }
  await eraseCandidate(ports, network.value.id, found.value)
  return answered({ gone: true })
}
