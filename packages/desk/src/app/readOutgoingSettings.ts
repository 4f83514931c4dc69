/** How mail and reminders are set. */
import type { OutgoingSettings } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { carriersNow } from './outgoing/carriersNow.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export type OutgoingSettingsPorts = Pick<Ports, 'ledger' | 'outgoingSettings' | 'outgoingSecrets' | 'clock'>

export async function readOutgoingSettings(ports: OutgoingSettingsPorts): Promise<Answer<OutgoingSettings>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id, readingTime, timeZone } = network.value
  const { mail, webhook, file } = await carriersNow(ports, id)
  return answered({
    mail: await ports.outgoingSettings.mail(id),
    reminders: await ports.outgoingSettings.reminders(id),
    carriers: { mail, webhook, file },
    readingTime,
    timeZone,
  })
}
