/**
 * Give a person a password. One at a screen shows their own first, since anybody may sit down at it. The first password is
 * a coordinator's: from then on nobody gets in without one.
 */
import type { Actor, People, SetPasswordAsk } from '@gaugewright/contract'
import { ownerAtTheDesk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { findPerson } from './access/findPerson.ts'
import { isGuessable } from './access/guessable.ts'
import { hashPassword, isPassword } from './access/passwords.ts'
import { wirePeople } from './access/wirePeople.ts'
import { type Answer, answered, refused } from './answer.ts'

/** @param actor  null at the command line, where the ledger file itself could be changed */
export async function setPassword(
  ports: Pick<Ports, 'access' | 'ledger' | 'outgoingSettings' | 'clock' | 'newId'>,
  ask: SetPasswordAsk,
  actor: Actor | null,
  doer: Doer,
): Promise<Answer<People>> {
  const { access } = ports
  const found = await findPerson(ports, ask.personId)
  if (!found.ok) return found
  const person = found.value
  if (actor !== null && actor.personId !== ownerAtTheDesk.personId) {
    if (actor.role !== 'coordinator' && actor.personId !== person.id) {
      return refused('ROLE_TOO_LOW', 'the password of another person', 'Ask your coordinator.')
    }
    if (!(await isPassword(await access.passwordHash(actor.personId), ask.ownPassword ?? ''))) {
      await writeTrail(ports, doer, { act: 'setPassword', subject: person.id, result: 'refused' })
      return refused('OWN_PASSWORD_WRONG', 'your own password does not fit', 'Type your own password again.')
    }
  }
  if (person.mail === null) {
    return refused('MAIL_MISSING', `${person.name} has no mail address to sign in with`, 'Give the person one first.')
  }
  if (person.role !== 'coordinator' && !(await access.hasAnyPassword())) {
    return refused('COORDINATOR_FIRST', 'nobody has a password yet', 'Give a coordinator one first.')
  }
  const networks = await ports.ledger.networks()
  const about = [person.name, person.mail, ...networks.map(({ name }) => name)].flatMap((text) => [
    text,
    ...words(text),
  ])
  if (isGuessable(ask.password, about)) {
    return refused(
      'PASSWORD_GUESSABLE',
      'a password that is tried early',
      'Take several words that do not go together.',
    )
  }
  await access.setPasswordHash(person.id, await hashPassword(ask.password))
  await writeTrail(ports, doer, { act: 'setPassword', subject: person.id })
  return answered(await wirePeople(ports))
}

function words(text: string): string[] {
  return text.split(/[^\p{L}\p{N}]+/u).filter((word) => word.length > 2)
}
