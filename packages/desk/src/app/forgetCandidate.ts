/** Erases an offer with everything about it: words, contacts, letters, yard and photos. A person with a gauge stays. */
import type { ForgetCandidateAsk, OfferGone } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, answered } from './answer.ts'
import { eraseCandidate } from './people/eraseCandidate.ts'
import { findCandidate } from './people/readCandidates.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function forgetCandidate(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outbox' | 'photos' | 'clock' | 'newId'>,
  { candidateId }: ForgetCandidateAsk,
  doer: Doer,
): Promise<Answer<OfferGone>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const found = await findCandidate(ports, network.value.id, candidateId)
  if (!found.ok) return found
  await eraseCandidate(ports, network.value.id, found.value)
  await writeTrail(ports, doer, { act: 'forgetCandidate', subject: candidateId })
  return answered({ gone: true })
}
