/** Sign in with address and password. A wrong password and an unknown address are told alike, in the same time. */
import type { SignInAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { isPassword } from './access/passwords.ts'
import { type NewSession, startSession } from './access/sessions.ts'
import { type Answer, answered, refused } from './answer.ts'

/** @param former  secret of the session that the browser had before */
export async function signIn(
  ports: Pick<Ports, 'access' | 'clock' | 'newId'>,
  ask: SignInAsk & { former: string | undefined },
): Promise<Answer<NewSession>> {
  const person = await ports.access.personByMail(ask.mail)
  const kept = person === null ? null : await ports.access.passwordHash(person.id)
  const isRight = await isPassword(kept, ask.password)
  if (person === null || !isRight) {
    const doer: Doer = { personId: null, door: 'desk' }
    await writeTrail(ports, doer, { act: 'signIn', subject: person?.id ?? null, result: 'refused' })
    return refused('SIGN_IN_FAILED', 'address and password do not fit', 'Type both again, or ask your coordinator.')
  }
  const session = await startSession(ports, person, ask.former)
  await writeTrail(ports, { personId: person.id, door: 'desk' }, { act: 'signIn', subject: person.id })
  return answered(session)
}
