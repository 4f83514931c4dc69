/** Sessions: how long they last, and who is behind one. */
import type { Actor, Role } from '@gaugewright/contract'
import type { StoredPerson } from '../../ports/access.ts'
import type { Ports } from '../../ports/ports.ts'
import { digestOf, newSecret } from './secrets.ts'

const HOUR_MS = 3_600_000

/** A shift for those who work at the desk. An observer's phone is asked again after a season, not on a morning of rain. */
export function sessionMs(role: Role): number {
  return role === 'observer' ? 90 * 24 * HOUR_MS : 12 * HOUR_MS
}

export interface NewSession {
  /** For the cookie; it is kept nowhere else. */
  secret: string
  maxAgeS: number
  actor: Actor
}

/** Always under a fresh secret, whatever the browser brought along (session fixation); the session it had is ended. */
export async function startSession(
  ports: Pick<Ports, 'access' | 'clock'>,
  person: StoredPerson,
  former: string | undefined,
): Promise<NewSession> {
  const { access, clock } = ports
  const now = clock.nowUtc()
  const lastsMs = sessionMs(person.role)
  const secret = newSecret()
  if (former !== undefined) await access.endSession(digestOf(former))
  await access.sweep(now)
  await access.startSession({
    tokenHash: digestOf(secret),
    personId: person.id,
    startedAtUtc: now,
    endsAtUtc: new Date(Date.parse(now) + lastsMs).toISOString(),
  })
  return { secret, maxAgeS: lastsMs / 1000, actor: actorFrom(person) }
}

/** Null where the secret is of no session that still lasts. */
export async function actorBehind(ports: Pick<Ports, 'access' | 'clock'>, secret: string): Promise<Actor | null> {
  const session = await ports.access.session(digestOf(secret), ports.clock.nowUtc())
  if (session === null) return null
  const person = await ports.access.person(session.personId)
  return person === null ? null : actorFrom(person)
}

export function actorFrom({ id, role, name, gauges }: StoredPerson): Actor {
  return { personId: id, role, name, gauges: [...gauges] }
}
