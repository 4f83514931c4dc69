/** Set reminders, or switch them off: a new setting beside the old ones. Made after today's hour, it begins tomorrow. */
import type { OutgoingSettings, SetRemindersAsk } from '@gaugewright/contract'
import { type Answer, refused } from './answer.ts'
import { type OutgoingSettingsPorts, readOutgoingSettings } from './readOutgoingSettings.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function setReminders(
  ports: OutgoingSettingsPorts,
  { settings, by }: SetRemindersAsk,
): Promise<Answer<OutgoingSettings>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id, readingTime } = network.value
  if (settings.isOn && settings.atTime <= readingTime) {
    const seen = `reminders at ${settings.atTime}, while readings are made at ${readingTime}`
    return refused('REMINDERS_TOO_EARLY', seen, 'Choose an hour after the reading hour, on the same day.')
  }
  if (settings.isOn && settings.deskUrl === null) {
    return refused(
      'REMINDERS_NEED_ADDRESS',
      'no address of the desk is set',
      'Set where people reach the desk: the links by which they read and stop begin with it.',
    )
  }
  await ports.outgoingSettings.setReminders(id, { settings, by, setAtUtc: ports.clock.nowUtc() })
  return await readOutgoingSettings(ports)
}
