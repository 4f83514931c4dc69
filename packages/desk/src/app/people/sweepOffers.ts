/** Closed offers whose time is over are erased: nothing is kept longer than is needed. */
import type { Ports } from '../../ports/ports.ts'
import { eraseCandidate } from './eraseCandidate.ts'
import { offerPageWords } from './offerPageWords.ts'
import { readCandidates } from './readCandidates.ts'

const MONTH_DAYS = 30.44

/** @returns offers erased */
export async function sweepOffers(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outbox' | 'photos' | 'clock'>,
): Promise<number> {
  let erased = 0
  for (const { id } of await ports.ledger.networks()) {
    const { keepMonths } = await offerPageWords(ports, id)
    for (const candidate of await readCandidates(ports, id)) {
      if (candidate.state !== 'closed' || candidate.ageDays < keepMonths * MONTH_DAYS) continue
      await eraseCandidate(ports, id, candidate)
      erased++
    }
  }
  return erased
}
