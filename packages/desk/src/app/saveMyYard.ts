/** A candidate draws their yard, by the link in their mail. Each drawing is a survey of its own. */
import type { MyOffer, SaveMyYardAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import type { Answer } from './answer.ts'
import { myOffer } from './myOffer.ts'
import { candidateOfLink } from './people/ownLink.ts'
import { aboutCandidate } from './people/readCandidates.ts'
import { todayOf } from './people/todayOf.ts'
import { appendSurvey } from './sites/appendSurvey.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function saveMyYard(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'photos' | 'redrawPhoto' | 'clock' | 'newId'>,
  ask: SaveMyYardAsk,
): Promise<Answer<MyOffer>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const candidateId = await candidateOfLink(ports, network.value.id, ask.secret)
  if (!candidateId.ok) return candidateId
  const place = { networkId: network.value.id, about: aboutCandidate(candidateId.value), by: '' }
  const { id, plan, note } = ask
  const surveyedOn = todayOf(network.value, ports)
  const saved = await appendSurvey(ports, place, { id, plan, note, surveyedOn, photosBase64: [] })
  return saved.ok ? await myOffer(ports, { secret: ask.secret }) : saved
}
