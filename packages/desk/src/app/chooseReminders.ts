/** Write down whether and how a person wants to be reminded, as told to the coordinator. */
import type { ChooseRemindersAsk, ReminderChoice } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { findPerson } from './access/findPerson.ts'
import { type Answer, answered, refused } from './answer.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function chooseReminders(
  ports: Pick<Ports, 'ledger' | 'access' | 'outgoingSettings' | 'clock'>,
  ask: ChooseRemindersAsk,
): Promise<Answer<ReminderChoice>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const found = await findPerson(ports, ask.personId)
  if (!found.ok) return found
  // A number that is known stays, whichever way is chosen.
  const before = (await ports.outgoingSettings.choices(network.value.id)).get(found.value.id)
  const phone = ask.phone ?? before?.phone ?? null
  if (ask.wants && ask.way === 'text' && phone === null) {
    return refused('PHONE_MISSING', 'text messages without a number', 'Give the number, with its country code.')
  }
  const { wants, way, by } = ask
  const choice = { personId: found.value.id, wants, way, phone }
  await ports.outgoingSettings.choose(network.value.id, { ...choice, by, chosenAtUtc: ports.clock.nowUtc() })
  return answered(choice)
}
