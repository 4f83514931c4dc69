/** People as the screens see them: no secret, and the day on which they were last seen. */
import type { People, Person } from '@gaugewright/contract'
import type { StoredPerson } from '../../ports/access.ts'
import type { Ports } from '../../ports/ports.ts'

export async function wirePeople({ access }: Pick<Ports, 'access'>): Promise<People> {
  const [people, withPassword, lastSeen] = await Promise.all([
    access.people(),
    access.withPassword(),
    access.lastSeen(),
  ])
  return { people: people.map((person) => wirePerson(person, withPassword, lastSeen)) }
}

export function wirePerson(
  person: StoredPerson,
  withPassword: ReadonlySet<string>,
  lastSeen: ReadonlyMap<string, string>,
): Person {
  const { id, name, role, mail, language, gauges, addedAtUtc } = person
  const hasPassword = withPassword.has(id)
  return {
    id,
    name,
    role,
    mail,
    language,
    gauges: [...gauges],
    addedAtUtc,
    hasPassword,
    lastSeenOn: lastSeen.get(id) ?? null,
  }
}
