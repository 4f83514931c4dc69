/** Queue one mail to see whether mail is set up rightly; the outbox tells how it went. */
import type { QueuedMail, SendTestMailAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { carriersNow } from './outgoing/carriersNow.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

const USEFUL_MS = 3_600_000

const words = {
  en: (network: string) => ({ subject: `A test from ${network}`, text: `Mail from ${network} arrives.\n` }),
  es: (network: string) => ({ subject: `Prueba de ${network}`, text: `El correo de ${network} llega.\n` }),
}

export async function sendTestMail(
  ports: Pick<Ports, 'ledger' | 'outbox' | 'outgoingSettings' | 'outgoingSecrets' | 'clock' | 'newId'>,
  { to, by }: SendTestMailAsk,
): Promise<Answer<QueuedMail>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { mail } = await carriersNow(ports, network.value.id)
  if (mail.code !== null) return refused(mail.code, 'mail is not ready to go out', mailAdvice(mail.code))
  const id = ports.newId()
  const queuedAtUtc = ports.clock.nowUtc()
  const letter = words[network.value.language](network.value.name)
  await ports.outbox.queue([
    {
      id,
      networkId: network.value.id,
      key: `test ${id}`,
      purpose: 'test',
      content: { kind: 'mail', to, headers: {}, ...letter },
      repeatable: false,
      isSecret: false,
      by,
      queuedAtUtc,
      notAfterUtc: new Date(Date.parse(queuedAtUtc) + USEFUL_MS).toISOString(),
    },
  ])
  return answered({ id })
}

export function mailAdvice(code: string): string {
  return code === 'MAIL_PASSWORD_MISSING'
    ? 'Start the desk with the password in GAUGEWRIGHT_SMTP_PASSWORD.'
    : 'Set mail up in Settings, or with "gaugewright mail set".'
}
