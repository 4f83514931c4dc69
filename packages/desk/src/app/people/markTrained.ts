import type { Ports } from '../../ports/ports.ts'
import { standing } from './journalBody.ts'
import { aboutCandidate, findCandidate } from './readCandidates.ts'
import { newEntry } from './writeEntry.ts'

/** Somebody has passed the drills: an offer that had come as far as the gauge is a step further. */
export async function markTrained(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  networkId: string,
  who: { candidateId: string } | { personId: string },
): Promise<void> {
  const given = standing(await ports.journal.ofKinds(networkId, ['gauge given']), 'gauge given')
  const candidateId =
    'candidateId' in who
      ? who.candidateId
      : given.find(({ body }) => body.personId === who.personId)?.entry.about.slice(aboutCandidate('').length)
  if (candidateId === undefined) return
  const found = await findCandidate(ports, networkId, candidateId)
  if (!found.ok || found.value.state !== 'gauge in hand') return
  const body = { state: 'trained' as const, why: '' }
  await ports.journal.append([newEntry(ports, networkId, aboutCandidate(candidateId), 'state', body, { by: '' })])
}
