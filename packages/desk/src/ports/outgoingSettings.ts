/**
 * How mail and reminders are set, and what each person chose. Settings and choices are only ever added to; the last is in
 * force.
 */
import type { MailSettings, ReminderSettings } from '@gaugewright/contract'

export interface SetBy<T> {
  settings: T
  by: string
  setAtUtc: string
}

export interface StoredReminderChoice {
  personId: string
  wants: boolean
  way: 'mail' | 'text'
  phone: string | null
  /** Who chose: the person's own tap on a link, or the coordinator. */
  by: string
  chosenAtUtc: string
}

/** Every method rejects with a LedgerError, and then nothing has changed. Whatever resolved is durable. */
export interface OutgoingSettingsStore {
  /** Null where mail was never set up, or was taken away again. */
  mail(networkId: string): Promise<SetBy<MailSettings> | null>
  reminders(networkId: string): Promise<SetBy<ReminderSettings> | null>
  setMail(networkId: string, set: SetBy<MailSettings | null>): Promise<void>
  setReminders(networkId: string, set: SetBy<ReminderSettings>): Promise<void>
  /** The last choice of each person, by person. */
  choices(networkId: string): Promise<Map<string, StoredReminderChoice>>
  choose(networkId: string, choice: StoredReminderChoice): Promise<void>
  /** Drops the phone number and the choices of a person, everywhere. */
  forgetPerson(personId: string): Promise<void>
  /** The secret that signs the links of this network: `fresh` the first time it is asked for, the same ever after. */
  linkSecret(networkId: string, fresh: string): Promise<string>
}
