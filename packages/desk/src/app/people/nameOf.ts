import type { Ports } from '../../ports/ports.ts'

/** Names of people by their ids; empty for those who are not known (any more). */
export async function namesOfPeople(ports: Pick<Ports, 'access'>): Promise<(personId: string) => string> {
  const names = new Map((await ports.access.people()).map(({ id, name }) => [id, name]))
  return (personId) => names.get(personId) ?? ''
}
