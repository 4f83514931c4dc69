/** A candidate draws their yard and sends photos of it, by the link in their mail. Each drawing is a survey of its own. */
import type { MyOffer, SaveMyYardAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, refused } from './answer.ts'
import { myOffer } from './myOffer.ts'
import { ofKind } from './people/journalBody.ts'
import { candidateOfLink } from './people/ownLink.ts'
import { aboutCandidate } from './people/readCandidates.ts'
import { todayOf } from './people/todayOf.ts'
import { appendSurvey } from './sites/appendSurvey.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

/** Over all drawings: whoever holds a link is not known yet, and the room for photos is everybody's. */
const PHOTOS_OF_CANDIDATE = 24

export async function saveMyYard(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'photos' | 'redrawPhoto' | 'clock' | 'newId'>,
  ask: SaveMyYardAsk,
): Promise<Answer<MyOffer>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const candidateId = await candidateOfLink(ports, network.value.id, ask.secret)
  if (!candidateId.ok) return candidateId
  const place = { networkId: network.value.id, about: aboutCandidate(candidateId.value), by: '' }
  const { id, plan, note, photos } = ask
  const entries = photos.length === 0 ? [] : await ports.journal.about(network.value.id, [place.about])
  const others = ofKind(entries, 'survey').filter(({ entry }) => entry.id !== id)
  const kept = others.reduce((count, { body }) => count + body.photos.length, 0)
  if (kept + photos.length > PHOTOS_OF_CANDIDATE) {
    return refused(
      'PHOTOS_TOO_MANY',
      `${kept} photos are with the network already`,
      `Send at most ${PHOTOS_OF_CANDIDATE} in all; the plan itself counts without them.`,
    )
  }
  const surveyedOn = todayOf(network.value, ports)
  const saved = await appendSurvey(ports, place, { id, plan, note, surveyedOn, photos })
  return saved.ok ? await myOffer(ports, { secret: ask.secret }) : saved
}
