/**
 * Signs people in at a test desk. The desk opens without a sign-in until somebody has a password: `lockDesk` gives the
 * owner one, and from then on a request needs the cookie of a person.
 *
 *   const desk = await openTestDesk()
 *   const owner = await lockDesk(desk)
 *   const observer = await signedIn(desk, { role: 'observer', gauges: ['gauge-1'] })
 *   await desk.app.inject({ method: 'GET', url: '/api/my/gauges', ...observer.request })
 */
import type { Role } from '@gaugewright/contract'
import { startSession } from '../../src/app/access/sessions.ts'
import type { StoredPerson } from '../../src/ports/access.ts'
import type { Ports } from '../../src/ports/ports.ts'

/** Of 32 random bytes that were thrown away. */
const NOBODYS_HASH = '$argon2id$v=19$m=19456,t=2,p=1$o7RLCtBvV2yqUwZOwNqp9A$Q/ozAKybfXjQkkSILhyVhIbW7Wz58SaLSHKVuXad8O4'

interface Desk {
  ports: Pick<Ports, 'access' | 'clock' | 'newId'>
}

export interface SignedIn {
  person: StoredPerson
  /** What to spread into `app.inject`. */
  request: { headers: Record<string, string> }
  cookie: string
}

export async function signedIn({ ports }: Desk, given: Partial<StoredPerson> & { role: Role }): Promise<SignedIn> {
  const id = given.id ?? ports.newId()
  const name = given.name ?? `${given.role} ${id}`
  const person: StoredPerson = {
    mail: `${id}@people.example`,
    language: 'en',
    gauges: [],
    addedAtUtc: ports.clock.nowUtc(),
    ...given,
    id,
    name,
  }
  await ports.access.savePerson(person)
  const { secret } = await startSession(ports, person, undefined)
  const cookie = `gaugewright-session=${secret}`
  return { person, cookie, request: { headers: { cookie, 'content-type': 'application/json' } } }
}

/** From now on nobody gets in without a sign-in. Nobody knows the password. */
export async function lockDesk(desk: Desk): Promise<SignedIn> {
  const owner = await signedIn(desk, { role: 'coordinator', name: 'Owner' })
  await desk.ports.access.setPasswordHash(owner.person.id, NOBODYS_HASH)
  return await signedIn(desk, { ...owner.person })
}
