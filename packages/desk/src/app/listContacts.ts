/** Everything that was exchanged with a person, newest first: what people wrote down, and what the desk sent by itself. */
import type { Contact, Contacts, ContactsAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { ofKind } from './people/journalBody.ts'
import { namesOfPeople } from './people/nameOf.ts'
import { personBehind } from './people/personBehind.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function listContacts(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outbox' | 'outgoingSettings' | 'clock'>,
  { about }: ContactsAsk,
): Promise<Answer<Contacts>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const networkId = network.value.id
  const person = await personBehind(ports, networkId, about)
  if (!person.ok) return person
  const nameOf = await namesOfPeople(ports)
  const sent = person.value.mail === null ? [] : await ports.outbox.toRecipient(networkId, person.value.mail)
  const byId = new Map(sent.map((message) => [message.id, message]))
  const contacts: Contact[] = []
  for (const { entry, body } of ofKind(await ports.journal.about(networkId, person.value.about), 'contact')) {
    const message = body.outgoingId === null ? undefined : byId.get(body.outgoingId)
    if (message !== undefined) byId.delete(message.id)
    contacts.push({
      id: entry.id,
      way: body.way,
      text: body.text,
      atUtc: entry.atUtc,
      by: nameOf(entry.by),
      isTakenBack: entry.takenBack !== null,
      outgoing: message === undefined ? null : { id: message.id, state: message.state, error: message.lastError },
    })
  }
  for (const message of byId.values()) {
    // A link to sign in is no exchange, and neither is a test.
    if (message.purpose === 'sign-in' || message.purpose === 'test' || message.content.kind !== 'mail') continue
    contacts.push({
      id: message.id,
      way: 'letter',
      text: message.content.subject,
      atUtc: message.queuedAtUtc,
      by: message.by === 'rule' || message.by === 'public page' ? '' : message.by,
      isTakenBack: false,
      outgoing: { id: message.id, state: message.state, error: message.lastError },
    })
  }
  return answered({ about, contacts: contacts.sort((a, b) => (a.atUtc < b.atUtc ? 1 : -1)) })
}
