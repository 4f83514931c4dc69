/** Takes a line of the log back, or puts it back. A letter that went out cannot be unsent: its line stays. */
import type { Contacts, WithdrawContactAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { listContacts } from './listContacts.ts'
import { ofKind } from './people/journalBody.ts'
import { personBehind } from './people/personBehind.ts'
import { writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function withdrawContact(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outbox' | 'outgoingSettings' | 'clock' | 'newId'>,
  ask: WithdrawContactAsk,
  doer: Doer,
): Promise<Answer<Contacts>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const networkId = network.value.id
  const person = await personBehind(ports, networkId, ask.about)
  if (!person.ok) return person
  const all = ofKind(await ports.journal.about(networkId, person.value.about), 'contact')
  const found = all.find(({ entry }) => entry.id === ask.contactId)
  if (found === undefined || found.body.way === 'letter') {
    const seen =
      found === undefined ? `the contact "${ask.contactId.slice(0, 60)}"` : 'a letter that went to the outbox'
    return refused(
      'CONTACT_UNKNOWN',
      seen,
      'Look at the log again; a letter that waits can be discarded in the outbox.',
    )
  }
  if (ask.undo) await ports.journal.putBack(networkId, ask.contactId)
  else await ports.journal.takeBack(networkId, ask.contactId, writer(doer), ports.clock.nowUtc())
  await writeTrail(ports, doer, { act: 'withdrawContact', subject: ask.about })
  return await listContacts(ports, { about: ask.about })
}
