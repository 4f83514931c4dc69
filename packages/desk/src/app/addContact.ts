/** A call, a visit, a mail that came, a note. Who called or visited has answered an offer. */
import type { AddContactAsk, Contacts } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import type { Answer } from './answer.ts'
import { listContacts } from './listContacts.ts'
import { markAnswered } from './people/markAnswered.ts'
import { personBehind } from './people/personBehind.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function addContact(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outbox' | 'outgoingSettings' | 'clock' | 'newId'>,
  ask: AddContactAsk,
  doer: Doer,
): Promise<Answer<Contacts>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const person = await personBehind(ports, network.value.id, ask.about)
  if (!person.ok) return person
  const body = { way: ask.way, text: ask.text, outgoingId: null }
  const id = ask.id ?? ports.newId()
  const entry = newEntry(ports, network.value.id, ask.about, 'contact', body, { by: writer(doer), id })
  const isNew = (await ports.journal.append([entry])) > 0
  if (isNew && (ask.way === 'call' || ask.way === 'visit')) {
    await markAnswered(ports, network.value.id, person.value.candidateId, doer)
  }
  if (isNew) await writeTrail(ports, doer, { act: 'addContact', subject: ask.about })
  return await listContacts(ports, { about: ask.about })
}
