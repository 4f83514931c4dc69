import type { OutgoingSecrets } from '../ports/carriers.ts'

/** Shorter ones can be guessed: 192 bits, as the Standard Webhooks specification asks. */
const SHORTEST_SECRET = 24

export function outgoingSecretsFrom(environment: Readonly<Record<string, string | undefined>>): OutgoingSecrets {
  const secret = environment.GAUGEWRIGHT_WEBHOOK_SECRET ?? ''
  return {
    smtpPassword: environment.GAUGEWRIGHT_SMTP_PASSWORD ?? null,
    webhookSecret: secret.length >= SHORTEST_SECRET ? secret : null,
  }
}
