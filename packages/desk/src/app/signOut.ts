/** End the session of this browser. */
import type { SignedOut } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { digestOf } from './access/secrets.ts'
import { type Answer, answered } from './answer.ts'

/** @param ask.secret  of the session; undefined where there is none */
export async function signOut(
  ports: Pick<Ports, 'access' | 'clock' | 'newId'>,
  ask: { secret: string | undefined; doer: Doer | null },
): Promise<Answer<SignedOut>> {
  if (ask.secret !== undefined) await ports.access.endSession(digestOf(ask.secret))
  if (ask.doer !== null) await writeTrail(ports, ask.doer, { act: 'signOut', subject: ask.doer.personId })
  return answered({ signedOut: true })
}
