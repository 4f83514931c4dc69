/** Somebody must be able to look after the people: the last coordinator who can sign in stays one. */
import type { Ports } from '../../ports/ports.ts'
import { refused } from '../answer.ts'

export async function lastCoordinatorProblem({ access }: Pick<Ports, 'access'>, personId: string) {
  const withPassword = await access.withPassword()
  if (!withPassword.has(personId)) return null
  const able = (await access.people()).filter(({ id, role }) => role === 'coordinator' && withPassword.has(id))
  if (able.length !== 1 || able[0]?.id !== personId) return null
  return refused(
    'LAST_COORDINATOR',
    'nobody else could look after the people',
    'Give another coordinator a password first.',
  )
}
