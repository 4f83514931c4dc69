/** What the lists of People show, in which order: pure. */
import { type Candidate, type ObserverRow, type OfferState, offerStates, type PeopleDesk } from '@gaugewright/contract'

export type PeopleShow = 'offers' | 'observers'

/** Names a person on the screen and in its address. */
export function keyOf(one: Candidate | ObserverRow): string {
  return 'offer' in one ? `offers/${one.id}` : `observers/${one.code}`
}

/** Offers by state in the order of the way; within a state who has waited longest comes first. */
export function offersByState(candidates: readonly Candidate[]): { state: OfferState; candidates: Candidate[] }[] {
  return offerStates
    .map((state) => ({
      state,
      candidates: candidates.filter((one) => one.state === state).sort((a, b) => (a.sinceUtc < b.sinceUtc ? -1 : 1)),
    }))
    .filter((group) => group.candidates.length > 0)
}

export function foundOffers(desk: PeopleDesk, search: string): Candidate[] {
  const fits = fitsSearch(search)
  return offersByState(
    desk.candidates.filter(({ offer, gauge }) => fits([offer.name, offer.place, gauge?.code ?? ''])),
  ).flatMap((group) => group.candidates)
}

export function foundObservers(desk: PeopleDesk, search: string): ObserverRow[] {
  const fits = fitsSearch(search)
  return desk.observers.filter(({ name, code, gaugeName }) => fits([name, code, gaugeName]))
}

function fitsSearch(search: string): (texts: readonly string[]) => boolean {
  const plain = (text: string) => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()
  const wanted = plain(search.trim())
  return (texts) => wanted === '' || texts.some((text) => plain(text).includes(wanted))
}

/** Whole days, as people count them. */
export function wholeDays(days: number): number {
  return Math.floor(days)
}
