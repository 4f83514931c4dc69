/** Set how mail goes out, or take it away: a new setting beside the old ones. Nothing is sent by setting it. */
import type { OutgoingSettings, SetMailAsk } from '@gaugewright/contract'
import { type Answer, refused } from './answer.ts'
import { type OutgoingSettingsPorts, readOutgoingSettings } from './readOutgoingSettings.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function setMail(
  ports: OutgoingSettingsPorts,
  { settings, by }: SetMailAsk,
): Promise<Answer<OutgoingSettings>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  if (settings?.security === 'none' && !isThisComputer(settings.host)) {
    return refused(
      'MAIL_UNPROTECTED',
      `mail to "${settings.host}" without encryption`,
      'Choose STARTTLS or TLS; without encryption only a mail server on this computer is taken.',
    )
  }
  await ports.outgoingSettings.setMail(network.value.id, { settings, by, setAtUtc: ports.clock.nowUtc() })
  return await readOutgoingSettings(ports)
}

function isThisComputer(host: string): boolean {
  return /^(localhost|127(\.\d{1,3}){3}|::1|\[::1\])$/i.test(host)
}
