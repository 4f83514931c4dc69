/** People as the screens see them: no secret, the day on which they were last seen, and the number they gave. */
import type { People, Person } from '@gaugewright/contract'
import type { StoredPerson } from '../../ports/access.ts'
import type { Ports } from '../../ports/ports.ts'
import { phonesOf } from './phones.ts'

type PeoplePorts = Pick<Ports, 'access' | 'ledger' | 'outgoingSettings'>

export async function wirePeople(ports: PeoplePorts): Promise<People> {
  const people = await ports.access.people()
  const wire = await wiring(ports)
  return { people: people.map(wire) }
}

export async function wirePerson(ports: PeoplePorts, person: StoredPerson): Promise<Person> {
  return (await wiring(ports))(person)
}

async function wiring(ports: PeoplePorts): Promise<(person: StoredPerson) => Person> {
  const { access } = ports
  const [withPassword, lastSeen, phones] = await Promise.all([
    access.withPassword(),
    access.lastSeen(),
    phonesOf(ports),
  ])
  return ({ gauges, ...person }) => ({
    ...person,
    gauges: [...gauges],
    phone: phones.get(person.id) ?? null,
    hasPassword: withPassword.has(person.id),
    lastSeenOn: lastSeen.get(person.id) ?? null,
  })
}
