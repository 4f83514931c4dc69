import type { Candidate } from '@gaugewright/contract'
import type { Ports } from '../../ports/ports.ts'
import { ofKind } from './journalBody.ts'
import { aboutCandidate } from './readCandidates.ts'

/** Photos first, then mails, then the entries that lead to them: a run that was broken off can be done again. */
export async function eraseCandidate(
  ports: Pick<Ports, 'access' | 'journal' | 'outbox' | 'photos' | 'clock'>,
  networkId: string,
  candidate: Pick<Candidate, 'id' | 'offer'>,
): Promise<void> {
  const about = aboutCandidate(candidate.id)
  const entries = await ports.journal.about(networkId, [about])
  for (const { entry } of ofKind(entries, 'survey')) await ports.photos.erase(networkId, entry.id)
  const { mail } = candidate.offer
  const isSomebodyElses = mail !== null && (await ports.access.personByMail(mail)) !== null
  if (mail !== null && !isSomebodyElses)
    await ports.outbox.forgetRecipient(networkId, mail, 'erasure', ports.clock.nowUtc())
  await ports.journal.erase(networkId, [about])
}
