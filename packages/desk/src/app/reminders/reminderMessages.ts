/** Reminders as messages for the outbox. Each person's reminder of a day has one key, and so goes out at most once. */
import type { ReminderSettings } from '@gaugewright/contract'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { NewOutgoing, OutgoingContent } from '../../ports/outbox.ts'
import { linkToken } from './linkToken.ts'
import { reminderMail, reminderText } from './reminderNote.ts'
import type { Reminder } from './whomToRemind.ts'

export interface ReminderMessagesAsk {
  network: Pick<NetworkSettings, 'id' | 'name' | 'readingTime'>
  /** ISO date. */
  day: string
  settings: ReminderSettings & { deskUrl: string }
  linkSecret: string
  by: string
  nowUtc: string
  /** A note of yesterday is of no use: the end of the local date. */
  notAfterUtc: string
  newId: () => string
}

export function reminderKey(day: string, personId: string): string {
  return `reminder ${day} ${personId}`
}

export function reminderMessages(reminders: readonly Reminder[], ask: ReminderMessagesAsk): NewOutgoing[] {
  return reminders.map((reminder) => ({
    id: ask.newId(),
    networkId: ask.network.id,
    key: reminderKey(ask.day, reminder.person.personId),
    purpose: 'reminder',
    content: contentOf(reminder, ask),
    // A second note would be one too many.
    repeatable: false,
    // A call for a text message holds a phone number, which nobody needs once it is sent.
    isSecret: reminder.way === 'text',
    by: ask.by,
    queuedAtUtc: ask.nowUtc,
    notAfterUtc: ask.notAfterUtc,
  }))
}

function contentOf({ person, way, to, gauges }: Reminder, ask: ReminderMessagesAsk): OutgoingContent {
  const { network, settings, day } = ask
  const base = settings.deskUrl.replace(/\/+$/, '')
  const stopUrl = `${base}/reminders/stop/${linkToken(ask.linkSecret, network.id, person.personId)}`
  const { readingTime } = network
  const note = { name: person.name, network: network.name, day, readingTime, gauges, myGaugeUrl: `${base}/my`, stopUrl }
  if (way === 'text' && settings.textUrl !== null) {
    const body = { type: 'reminder', to, language: person.language, text: reminderText(person.language, note) }
    return { kind: 'webhook', url: settings.textUrl, body: JSON.stringify(body) }
  }
  const headers = {
    // RFC 2369 and, for the one tap, RFC 8058.
    'List-Unsubscribe': `<${stopUrl}>`,
    'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click',
    'List-Id': `reminders <reminders.${new URL(base).hostname}>`,
  }
  return { kind: 'mail', to, headers, ...reminderMail(person.language, note) }
}
