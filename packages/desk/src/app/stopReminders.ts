/** One tap on the link in a note: no more of them; or, taken back, notes again. The link is signed and needs no sign-in. */
import type { Ports } from '../ports/ports.ts'
import { newSecret } from './access/secrets.ts'
import { type Answer, answered, refused } from './answer.ts'
import { personOfToken } from './reminders/linkToken.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export interface StopRemindersAsk {
  token: string
  /** `look` changes nothing: a program that follows links to see where they lead must not stop anything. */
  act: 'look' | 'stop' | 'start'
}

export interface StoppedReminders {
  network: string
  language: 'en' | 'es'
  /** Whether the person gets reminders, after this. */
  wants: boolean
}

export async function stopReminders(
  ports: Pick<Ports, 'ledger' | 'access' | 'outgoingSettings' | 'clock'>,
  { token, act }: StopRemindersAsk,
): Promise<Answer<StoppedReminders>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id, name, language } = network.value
  const personId = personOfToken(await ports.outgoingSettings.linkSecret(id, newSecret()), id, token)
  if (personId === null) {
    return refused(
      'REMINDER_LINK_NOT_VALID',
      'a link that this desk did not make',
      'Open the link of the note again, whole.',
    )
  }
  const person = await ports.access.person(personId)
  const before = (await ports.outgoingSettings.choices(id)).get(personId)
  const was = before?.wants ?? true
  const wants = act === 'look' ? was : act === 'start'
  // Somebody who was erased gets nothing anyway, and leaves no new trace by asking for it.
  if (person !== null && wants !== was) {
    const { way, phone } = before ?? { way: 'mail' as const, phone: null }
    const chosenAtUtc = ports.clock.nowUtc()
    await ports.outgoingSettings.choose(id, { personId, wants, way, phone, by: 'link in a note', chosenAtUtc })
  }
  return answered({ network: name, language: person?.language ?? language, wants: person !== null && wants })
}
