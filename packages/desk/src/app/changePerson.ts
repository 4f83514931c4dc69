/**
 * Change what is known of a person: name, mail address, language, telephone number. The trail tells which of them, and holds
 * neither the old nor the new. A new address takes what is on its way to the old one with it: links to sign in stop working,
 * and the content of mails to it is emptied.
 */
import type { ChangePersonAsk, People } from '@gaugewright/contract'
import type { StoredPerson } from '../ports/access.ts'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { findPerson } from './access/findPerson.ts'
import { lastCoordinatorProblem } from './access/lastCoordinator.ts'
import { phonesOf, savePhone } from './access/phones.ts'
import { wirePeople } from './access/wirePeople.ts'
import { type Answer, answered, refused } from './answer.ts'

type ChangePorts = Pick<Ports, 'access' | 'ledger' | 'outbox' | 'outgoingSettings' | 'clock' | 'newId'>

export async function changePerson(ports: ChangePorts, ask: ChangePersonAsk, doer: Doer): Promise<Answer<People>> {
  const { access } = ports
  const found = await findPerson(ports, ask.personId)
  if (!found.ok) return found
  const before = found.value
  const { name = before.name, mail = before.mail, language = before.language } = ask
  if (mail !== before.mail) {
    const other = mail === null ? null : await access.personByMail(mail)
    if (other !== null) {
      return refused('MAIL_TAKEN', 'another person has this mail address', 'Give each person an address of their own.')
    }
    const problem = mail === null ? await lastCoordinatorProblem(ports, before.id) : null
    if (problem !== null) return problem
  }
  const oldPhone = (await phonesOf(ports)).get(before.id) ?? null
  const phone = ask.phone === undefined ? oldPhone : ask.phone
  const acts = [
    ...(name === before.name ? [] : ['changeName']),
    ...(mail === before.mail ? [] : ['changeMail']),
    ...(language === before.language ? [] : ['changeLanguage']),
    ...(phone === oldPhone ? [] : ['changePhone']),
  ]
  if (name !== before.name || mail !== before.mail || language !== before.language) {
    await access.savePerson({ ...before, name, mail, language })
  }
  if (name !== before.name) await renameAtGauges(ports, before, name)
  if (mail !== before.mail) await leaveOldAddress(ports, before)
  if (phone !== oldPhone) await savePhone(ports, before.id, phone, doer.personId ?? doer.door)
  for (const act of acts) await writeTrail(ports, doer, { act, subject: before.id })
  return answered(await wirePeople(ports))
}

/** The roll and the letters name who reads a gauge: where that is this person under the old name, under the new one. */
async function renameAtGauges(
  { ledger }: Pick<Ports, 'ledger'>,
  { name: oldName, gauges }: StoredPerson,
  observerName: string,
): Promise<void> {
  for (const { id: networkId } of await ledger.networks()) {
    const theirs = (await ledger.gauges(networkId)).filter(
      (gauge) => gauges.includes(gauge.id) && gauge.observerName === oldName,
    )
    if (theirs.length > 0) await ledger.saveGauges(theirs.map((gauge) => ({ ...gauge, observerName })))
  }
}

async function leaveOldAddress(ports: ChangePorts, { id, mail }: StoredPerson): Promise<void> {
  await ports.access.endLinksOf(id)
  if (mail === null) return
  for (const network of await ports.ledger.networks()) {
    await ports.outbox.forgetRecipient(network.id, mail, 'change of address', ports.clock.nowUtc())
  }
}
