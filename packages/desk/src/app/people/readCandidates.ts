/** Offers from the journal, with what the ledger knows of the gauges that were given. */
import type { Candidate } from '@gaugewright/contract'
import type { JournalEntry } from '../../ports/journal.ts'
import type { Gauge } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { candidateFrom } from './candidateFrom.ts'
import { standing } from './journalBody.ts'
import { namesOfPeople } from './nameOf.ts'

type CandidatePorts = Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock'>

const kinds = ['offer', 'offer changed', 'address confirmed', 'state', 'gauge given', 'contact', 'own link']

export function aboutCandidate(candidateId: string): string {
  return `candidate ${candidateId}`
}

/** Every offer of the network, newest first. */
export async function readCandidates(ports: CandidatePorts, networkId: string): Promise<Candidate[]> {
  const byAbout = new Map<string, JournalEntry[]>()
  for (const entry of await ports.journal.ofKinds(networkId, kinds)) {
    if (!entry.about.startsWith('candidate ')) continue
    const all = byAbout.get(entry.about)
    if (all === undefined) byAbout.set(entry.about, [entry])
    else all.push(entry)
  }
  const gauges = await ports.ledger.gauges(networkId)
  const nameOf = await namesOfPeople(ports)
  const found: Candidate[] = []
  for (const [about, entries] of byAbout) {
    const candidate = await readOne(ports, networkId, about, entries, gauges, nameOf)
    if (candidate !== null) found.push(candidate)
  }
  return found.sort((a, b) => (a.offeredAtUtc < b.offeredAtUtc ? 1 : -1))
}

export async function findCandidate(
  ports: CandidatePorts,
  networkId: string,
  candidateId: string,
): Promise<Answer<Candidate>> {
  const about = aboutCandidate(candidateId)
  const entries = await ports.journal.about(networkId, [about])
  const candidate = await readOne(
    ports,
    networkId,
    about,
    entries,
    await ports.ledger.gauges(networkId),
    await namesOfPeople(ports),
  )
  if (candidate !== null) return answered(candidate)
  return refused(
    'OFFER_UNKNOWN',
    `the offer "${candidateId.slice(0, 60)}"`,
    'Look at People, or "gaugewright offer list".',
  )
}

async function readOne(
  ports: CandidatePorts,
  networkId: string,
  about: string,
  entries: readonly JournalEntry[],
  gauges: readonly Gauge[],
  nameOf: (personId: string) => string,
): Promise<Candidate | null> {
  const given = standing(entries, 'gauge given').at(-1)
  const gauge = gauges.find(({ id }) => id === given?.body.gaugeId)
  return candidateFrom({
    id: about.slice('candidate '.length),
    entries,
    nameOf,
    nowUtc: ports.clock.nowUtc(),
    gauge: gauge === undefined ? null : { id: gauge.id, code: gauge.code, name: gauge.name },
    firstReading:
      given === undefined ? null : await firstReadingSince(ports, networkId, given.body.gaugeId, given.entry.atUtc),
  })
}

/** The first reading that came after the gauge was given. */
async function firstReadingSince(
  ports: CandidatePorts,
  networkId: string,
  gaugeId: string,
  givenAtUtc: string,
): Promise<{ day: string; receivedAtUtc: string } | null> {
  const readings = await ports.ledger.readingsOfGauge(networkId, gaugeId, givenAtUtc.slice(0, 10), '9999-12-31')
  const first = readings.find(({ receivedAtUtc }) => Date.parse(receivedAtUtc) >= Date.parse(givenAtUtc))
  return first === undefined ? null : { day: first.lastDay, receivedAtUtc: first.receivedAtUtc }
}
