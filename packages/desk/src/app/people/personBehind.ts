/** Who is meant by `candidate ID` or `person ID`: both names of one, where a candidate has become a person. */
import type { Ports } from '../../ports/ports.ts'
import { phonesOf } from '../access/phones.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { standing } from './journalBody.ts'
import { aboutCandidate, findCandidate } from './readCandidates.ts'

export interface PersonBehind {
  /** Everything in the journal about any of these is about them. */
  about: string[]
  candidateId: string | null
  personId: string | null
  name: string
  mail: string | null
  phone: string | null
  language: 'en' | 'es'
  gauge: { id: string; code: string; name: string } | null
}

export async function personBehind(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outgoingSettings' | 'clock'>,
  networkId: string,
  about: string,
): Promise<Answer<PersonBehind>> {
  const [kind, id = ''] = about.split(' ')
  const given = standing(await ports.journal.ofKinds(networkId, ['gauge given']), 'gauge given')
  if (kind === 'candidate') {
    const found = await findCandidate(ports, networkId, id)
    if (!found.ok) return found
    const { offer, personId, gauge } = found.value
    const person = personId === null ? null : await ports.access.person(personId)
    return answered({
      about: [about, ...(personId === null ? [] : [`person ${personId}`])],
      candidateId: id,
      personId,
      name: person?.name ?? offer.name,
      mail: person?.mail ?? offer.mail,
      phone: offer.phone,
      language: person?.language ?? offer.language,
      gauge,
    })
  }
  const person = await ports.access.person(id)
  if (person === null) {
    return refused(
      'PERSON_UNKNOWN',
      `nobody has the id "${id.slice(0, 60)}"`,
      'Look at People, or "gaugewright people list".',
    )
  }
  const before = given.filter(({ body }) => body.personId === id).map(({ entry }) => entry.about)
  const gauges = await ports.ledger.gauges(networkId)
  const gauge = gauges.find((one) => person.gauges.includes(one.id))
  return answered({
    about: [about, ...before],
    candidateId: before[0]?.slice(aboutCandidate('').length) ?? null,
    personId: id,
    name: person.name,
    mail: person.mail,
    phone: (await phonesOf(ports)).get(id) ?? null,
    language: person.language,
    gauge: gauge === undefined ? null : { id: gauge.id, code: gauge.code, name: gauge.name },
  })
}
