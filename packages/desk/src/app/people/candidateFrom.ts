/** An offer as it stands, from the entries of the journal about it: pure. */
import { type Candidate, type OfferState, offerStates, usualStateDays } from '@gaugewright/contract'
import type { JournalEntry } from '../../ports/journal.ts'
import { ofKind, standing } from './journalBody.ts'

const DAY_MS = 86_400_000

export interface CandidateAsk {
  id: string
  /** Everything about the candidate, oldest first. */
  entries: readonly JournalEntry[]
  /** First reading of the gauge that was given: its day, and when it came; null where there is none. */
  firstReading: { day: string; receivedAtUtc: string } | null
  gauge: Candidate['gauge']
  nameOf: (personId: string) => string
  nowUtc: string
}

/** @returns null where there is no offer (any more) */
export function candidateFrom({ id, entries, firstReading, gauge, nameOf, nowUtc }: CandidateAsk): Candidate | null {
  const made = standing(entries, 'offer')[0]
  if (made === undefined) return null
  const latest = standing(entries, 'offer changed').at(-1)?.body.offer ?? made.body.offer
  const states = ofKind(entries, 'state')
  const last = states.filter(({ entry }) => entry.takenBack === null).at(-1)
  const told: OfferState = last?.body.state ?? 'offered'
  const isReading = firstReading !== null && told !== 'closed' && told !== 'reading'
  const state: OfferState = isReading ? 'reading' : told
  const sinceUtc = isReading ? firstReading.receivedAtUtc : (last?.entry.atUtc ?? made.entry.atUtc)
  const ageDays = Math.max(0, (Date.parse(nowUtc) - Date.parse(sinceUtc)) / DAY_MS)
  const usual = usualStateDays[state]
  const given = standing(entries, 'gauge given').at(-1)
  return {
    id,
    offer: latest,
    offeredAtUtc: made.entry.atUtc,
    door: made.body.door,
    addressConfirmedAtUtc: standing(entries, 'address confirmed')[0]?.entry.atUtc ?? null,
    state,
    sinceUtc,
    ageDays,
    isOverdue: usual !== null && ageDays > usual,
    next: state === 'closed' || state === 'reading' ? null : (offerStates[offerStates.indexOf(state) + 1] ?? null),
    events: states.map(({ entry, body }) => ({
      id: entry.id,
      state: body.state,
      why: body.why,
      atUtc: entry.atUtc,
      by: nameOf(entry.by),
      isTakenBack: entry.takenBack !== null,
    })),
    firstAnswerAtUtc: firstAnswer(entries),
    firstReadingOn: firstReading?.day ?? (told === 'reading' ? (last?.entry.atUtc.slice(0, 10) ?? null) : null),
    gauge,
    personId: given?.body.personId ?? null,
  }
}

/** The first letter, call or visit; failing that, the first state that says that somebody answered. */
function firstAnswer(entries: readonly JournalEntry[]): string | null {
  const contacts = standing(entries, 'contact').filter(({ body }) => ['letter', 'call', 'visit'].includes(body.way))
  const states = standing(entries, 'state').filter(({ body }) => body.state !== 'offered' && body.state !== 'closed')
  const instants = [...contacts, ...states].map(({ entry }) => entry.atUtc)
  return instants.sort()[0] ?? null
}
