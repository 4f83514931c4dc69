/** Sign in by the link of a mail: once, in time, in the browser that asked for it. */
import type { UseLinkAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { writeTrail } from './access/doer.ts'
import { digestOf } from './access/secrets.ts'
import { type NewSession, startSession } from './access/sessions.ts'
import { type Answer, answered, refused } from './answer.ts'

/** @param ask.browser  secret that the asking browser keeps; undefined where this one never asked */
export async function useLink(
  ports: Pick<Ports, 'access' | 'clock' | 'newId'>,
  ask: UseLinkAsk & { browser: string | undefined; former: string | undefined },
): Promise<Answer<NewSession>> {
  const { access, clock } = ports
  const taken =
    ask.browser === undefined ? null : await access.takeLink(digestOf(ask.link), digestOf(ask.browser), clock.nowUtc())
  const person = taken === null ? null : await access.person(taken)
  // A link that was asked for before the person got another role opens no door that needs a password.
  if (person === null || person.role !== 'observer') {
    await writeTrail(ports, { personId: null, door: 'desk' }, { act: 'useLink', subject: null, result: 'refused' })
    return refused(
      'LINK_NOT_VALID',
      'the link was used, is too old, or was asked for in another browser',
      'Ask for a new link here, and open it in this browser.',
    )
  }
  const session = await startSession(ports, person, ask.former)
  await writeTrail(ports, { personId: person.id, door: 'desk' }, { act: 'useLink', subject: person.id })
  return answered(session)
}
