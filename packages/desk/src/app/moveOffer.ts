/** An offer comes to another state, or is closed with why. Any order is allowed: people do things in their own. */
import type { Candidate, MoveOfferAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { aboutCandidate, findCandidate } from './people/readCandidates.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function moveOffer(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: MoveOfferAsk,
  doer: Doer,
): Promise<Answer<Candidate>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const found = await findCandidate(ports, network.value.id, ask.candidateId)
  if (!found.ok) return found
  if (ask.state === 'closed' && ask.why === '') {
    return refused(
      'OFFER_WHY_MISSING',
      'an offer closed without a reason',
      'Say why in a few words: others will read it.',
    )
  }
  if (found.value.state === ask.state) return found
  const about = aboutCandidate(ask.candidateId)
  await ports.journal.append([
    newEntry(ports, network.value.id, about, 'state', { state: ask.state, why: ask.why }, { by: writer(doer) }),
  ])
  await writeTrail(ports, doer, { act: 'moveOffer', subject: ask.candidateId })
  return await findCandidate(ports, network.value.id, ask.candidateId)
}
