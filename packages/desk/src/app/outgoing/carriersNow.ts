/** Which kinds of messages can go out now; a kind that cannot is left waiting, and the desk says why. */
import type { CarrierState, MailSettings } from '@gaugewright/contract'
import type { OutgoingKind } from '../../ports/outbox.ts'
import type { Ports } from '../../ports/ports.ts'

export interface CarriersNow {
  mail: CarrierState
  webhook: CarrierState
  file: CarrierState
  /** With its password; null where mail is not ready. */
  mailSettings: (MailSettings & { password: string | null }) | null
}

const ready: CarrierState = { isReady: true, code: null }

export async function carriersNow(
  ports: Pick<Ports, 'outgoingSettings' | 'outgoingSecrets'>,
  networkId: string,
): Promise<CarriersNow> {
  const { smtpPassword, webhookSecret } = ports.outgoingSecrets
  const set = await ports.outgoingSettings.mail(networkId)
  const lacksPassword = set !== null && set.settings.user !== null && smtpPassword === null
  const mailCode = set === null ? 'MAIL_NOT_SET' : lacksPassword ? 'MAIL_PASSWORD_MISSING' : null
  return {
    mail: { isReady: mailCode === null, code: mailCode },
    webhook: webhookSecret === null ? { isReady: false, code: 'WEBHOOK_SECRET_MISSING' } : ready,
    file: ready,
    mailSettings: set === null || mailCode !== null ? null : { ...set.settings, password: smtpPassword },
  }
}

export function readyKinds(now: CarriersNow): OutgoingKind[] {
  return (['mail', 'webhook', 'file'] as const).filter((kind) => now[kind].isReady)
}
