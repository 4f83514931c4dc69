import type { StoredPerson } from '../../ports/access.ts'
import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'

/** By id, mail address, or a name that only one person has. */
export async function findPerson({ access }: Pick<Ports, 'access'>, asked: string): Promise<Answer<StoredPerson>> {
  const people = await access.people()
  const exact = people.find(({ id, mail }) => id === asked || mail === asked.toLowerCase())
  if (exact !== undefined) return answered(exact)
  const named = people.filter(({ name }) => name.toLowerCase() === asked.toLowerCase())
  if (named.length === 1 && named[0] !== undefined) return answered(named[0])
  return named.length === 0
    ? refused('PERSON_UNKNOWN', `nobody is "${asked.slice(0, 100)}"`, 'Look at "gaugewright people list".')
    : refused(
        'PERSON_UNCLEAR',
        `${named.length} people are called "${asked}"`,
        'Name the person by mail address or id.',
      )
}
