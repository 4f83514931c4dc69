/** Settings of mail and reminders in memory, for tests and trials. */
import type { MailSettings, ReminderSettings } from '@gaugewright/contract'
import type { Ledger } from '../../ports/ledger.ts'
import type { OutgoingSettingsStore, SetBy, StoredReminderChoice } from '../../ports/outgoingSettings.ts'
import { evenUtc } from '../outbox/evenInstant.ts'
import { unknownNetwork } from '../unknown.ts'

export function openMemoryOutgoingSettings(ledger: Pick<Ledger, 'networks'>): OutgoingSettingsStore {
  const mail = new Map<string, SetBy<MailSettings | null>>()
  const reminders = new Map<string, SetBy<ReminderSettings>>()
  const choices = new Map<string, Map<string, StoredReminderChoice>>()
  const secrets = new Map<string, string>()
  const check = async (networkId: string): Promise<void> => {
    if (!(await ledger.networks()).some(({ id }) => id === networkId)) throw unknownNetwork(networkId)
  }
  const even = <T>(set: SetBy<T>): SetBy<T> => structuredClone({ ...set, setAtUtc: evenUtc(set.setAtUtc) })
  return {
    async mail(networkId) {
      const set = mail.get(networkId)
      return set === undefined || set.settings === null ? null : structuredClone({ ...set, settings: set.settings })
    },
    reminders: async (networkId) => structuredClone(reminders.get(networkId) ?? null),
    async setMail(networkId, set) {
      await check(networkId)
      mail.set(networkId, even(set))
    },
    async setReminders(networkId, set) {
      await check(networkId)
      reminders.set(networkId, even(set))
    },
    choices: async (networkId) => structuredClone(choices.get(networkId) ?? new Map()),
    async choose(networkId, choice) {
      await check(networkId)
      const own = choices.get(networkId) ?? new Map<string, StoredReminderChoice>()
      choices.set(networkId, own.set(choice.personId, { ...choice, chosenAtUtc: evenUtc(choice.chosenAtUtc) }))
    },
    async forgetPerson(personId) {
      for (const own of choices.values()) own.delete(personId)
    },
    async linkSecret(networkId, fresh) {
      await check(networkId)
      const known = secrets.get(networkId) ?? fresh
      secrets.set(networkId, known)
      return known
    },
  }
}
