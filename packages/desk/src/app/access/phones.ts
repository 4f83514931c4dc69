/** Telephone numbers, which are kept beside how each person wants to be reminded. */
import type { Ports } from '../../ports/ports.ts'

/** By id of the person. */
export async function phonesOf({
  ledger,
  outgoingSettings,
}: Pick<Ports, 'ledger' | 'outgoingSettings'>): Promise<Map<string, string>> {
  const phones = new Map<string, string>()
  for (const { id } of await ledger.networks()) {
    for (const { personId, phone } of (await outgoingSettings.choices(id)).values()) {
      if (phone !== null) phones.set(personId, phone)
    }
  }
  return phones
}

/** Keeps or drops the number, and the choice as it was; without a number text messages become mails. */
export async function savePhone(
  { ledger, outgoingSettings, clock }: Pick<Ports, 'ledger' | 'outgoingSettings' | 'clock'>,
  personId: string,
  phone: string | null,
  by: string,
): Promise<void> {
  for (const { id } of await ledger.networks()) {
    const before = (await outgoingSettings.choices(id)).get(personId)
    const way = phone === null ? 'mail' : (before?.way ?? 'mail')
    const wants = before?.wants ?? true
    await outgoingSettings.choose(id, { personId, wants, way, phone, by, chosenAtUtc: clock.nowUtc() })
  }
}
