import type { Ports } from '../../ports/ports.ts'
import type { Doer } from '../access/doer.ts'
import { aboutCandidate, findCandidate } from './readCandidates.ts'
import { newEntry, writer } from './writeEntry.ts'

/** Whoever wrote to or called a person has answered their offer, where it waited for that. */
export async function markAnswered(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  networkId: string,
  candidateId: string | null,
  doer: Doer,
): Promise<void> {
  if (candidateId === null) return
  const found = await findCandidate(ports, networkId, candidateId)
  if (!found.ok || found.value.state !== 'offered') return
  const about = aboutCandidate(candidateId)
  const body = { state: 'answered' as const, why: '' }
  await ports.journal.append([newEntry(ports, networkId, about, 'state', body, { by: writer(doer) })])
}
