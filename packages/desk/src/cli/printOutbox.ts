/** Messages on their way out, for a terminal. */
import { type OutboxAnswer, type OutgoingRow, type OutgoingSettings, outgoingStates } from '@gaugewright/contract'
import { plainTable } from './plainTable.ts'

const notReady: Record<string, string> = {
  MAIL_NOT_SET: 'Mail is not set up: mail waits ("gaugewright mail set").',
  MAIL_PASSWORD_MISSING: 'The password for mail is not in GAUGEWRIGHT_SMTP_PASSWORD: mail waits.',
  WEBHOOK_SECRET_MISSING:
    'No secret of 24 characters or more is in GAUGEWRIGHT_WEBHOOK_SECRET: webhooks are not called.',
}

export function printOutbox({ counts, carriers, rows }: OutboxAnswer): string {
  const counted = outgoingStates.filter((state) => (counts[state] ?? 0) > 0).map((state) => `${counts[state]} ${state}`)
  const table = plainTable(['id', 'what', 'to', 'state', 'tries', 'queued (UTC)', 'last error'])
  for (const row of rows) {
    const { id, purpose, recipient, state, attempts, queuedAtUtc, lastError } = row
    table.push([
      id,
      purpose,
      recipient === '' ? '-' : recipient,
      state,
      attempts,
      minute(queuedAtUtc),
      lastError ?? '-',
    ])
  }
  const lines = [counted.length === 0 ? 'Nothing was ever queued.' : `${counted.join(', ')}.`, ...troubles(carriers)]
  return `${lines.join('\n')}\n${rows.length === 0 ? '' : `${table.toString()}\n`}`
}

export function printOutgoing({ id, purpose, recipient, state }: OutgoingRow): string {
  return `${id}: ${purpose} to ${recipient === '' ? 'somebody who was erased' : recipient}, ${state}.\n`
}

export function printOutgoingSettings({ mail, reminders, carriers }: OutgoingSettings): string {
  const lines: string[] = []
  if (mail !== null) {
    const { host, port, security, user, from } = mail.settings
    const login = user === null ? 'without a password' : `as ${user}`
    lines.push(
      `Mail: from ${from} by ${host}:${port} (${security}), ${login}; set by ${mail.by}, ${minute(mail.setAtUtc)} UTC.`,
    )
  }
  if (reminders === null || !reminders.settings.isOn) lines.push('Reminders: off.')
  else {
    const { atTime, deskUrl, textUrl } = reminders.settings
    lines.push(
      `Reminders: at ${atTime} local time; links begin with ${deskUrl ?? 'nothing yet'}; text messages: ${textUrl ?? 'none'}.`,
    )
  }
  return `${[...lines, ...troubles(carriers)].join('\n')}\n`
}

function troubles(carriers: OutboxAnswer['carriers']): string[] {
  return Object.values(carriers).flatMap(({ code }) => (code === null ? [] : [notReady[code] ?? code]))
}

function minute(instant: string): string {
  return instant.slice(0, 16).replace('T', ' ')
}
