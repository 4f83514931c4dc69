/**
 * Remind those who have not read today, each once; or only look whom. Run again, it reminds only those who were not yet. At
 * its hour the desk does the same by itself (reminders/remindWhenDue.ts).
 */
import type { Reminded, ReminderSettings } from '@gaugewright/contract'
import { isoFromEpochDay, observingDays } from '@gaugewright/science'
import type { NetworkSettings } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'
import { newSecret } from './access/secrets.ts'
import { type Answer, answered, refused } from './answer.ts'
import { reminderHour } from './reminders/reminderHour.ts'
import { reminderKey, reminderMessages } from './reminders/reminderMessages.ts'
import { rollOfDay } from './reminders/rollOfDay.ts'
import { type WhomToRemind, whomToRemind } from './reminders/whomToRemind.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export type RemindPorts = Pick<Ports, 'ledger' | 'access' | 'outbox' | 'outgoingSettings' | 'clock' | 'newId'>

export interface RemindAsk {
  /** Queue nothing. */
  isLook: boolean
  by: string
}

export async function remind(ports: RemindPorts, ask: RemindAsk): Promise<Answer<Reminded>> {
  const found = await firstNetwork(ports)
  if (!found.ok) return found
  const network = found.value
  const set = await ports.outgoingSettings.reminders(network.id)
  if (!ask.isLook && (set === null || !set.settings.isOn)) {
    return refused(
      'REMINDERS_OFF',
      'reminders are not switched on',
      'Switch them on in Settings, or "gaugewright remind set".',
    )
  }
  const nowMs = Date.parse(ports.clock.nowUtc())
  const hour = reminderHour(network, set?.settings.atTime ?? '23:59', nowMs)
  const days = observingDays(network.timeZone, network.readingTime)
  if (hour === null || days.kind === 'problem') {
    return refused('TIME_ZONE_UNKNOWN', network.timeZone, 'Import the network again with a zone of the IANA database.')
  }
  if (days.days.endUtcMs(hour.day) >= nowMs) {
    const seen = `today’s readings are due at ${network.readingTime}`
    return refused('REMINDERS_TOO_EARLY', seen, 'Remind after the reading hour.')
  }
  const textUrl = set?.settings.textUrl ?? null
  const whom = await whomNow(ports, network, hour.day, textUrl !== null)
  const isoDay = isoFromEpochDay(hour.day)
  if (!ask.isLook && set !== null && whom.remind.length > 0) {
    const { deskUrl } = set.settings
    if (deskUrl === null) {
      return refused(
        'REMINDERS_NEED_ADDRESS',
        'no address of the desk is set',
        'Set where people reach the desk: the links begin with it.',
      )
    }
    await ports.outbox.queue(
      reminderMessages(whom.remind, {
        network,
        day: isoDay,
        settings: { ...set.settings, deskUrl } satisfies ReminderSettings,
        linkSecret: await ports.outgoingSettings.linkSecret(network.id, newSecret()),
        by: ask.by,
        nowUtc: ports.clock.nowUtc(),
        notAfterUtc: new Date(hour.dayEndsMs).toISOString(),
        newId: ports.newId,
      }),
    )
  }
  return answered(wireReminded(whom, isoDay, !ask.isLook))
}

async function whomNow(
  ports: RemindPorts,
  network: NetworkSettings,
  day: number,
  hasText: boolean,
): Promise<WhomToRemind> {
  const stored = await ports.access.people()
  const people = stored.map(({ id, name, language, mail, gauges }) => ({ personId: id, name, language, mail, gauges }))
  const choices = await ports.outgoingSettings.choices(network.id)
  // Where there is nobody to send text messages, mail goes instead.
  if (!hasText) for (const [id, choice] of choices) choices.set(id, { ...choice, way: 'mail' })
  const isoDay = isoFromEpochDay(day)
  const keyOf = (personId: string): string => reminderKey(isoDay, personId)
  const known = await ports.outbox.knownKeys(
    network.id,
    people.map(({ personId }) => keyOf(personId)),
  )
  const reminded = new Set(people.map(({ personId }) => personId).filter((personId) => known.has(keyOf(personId))))
  return whomToRemind({ roll: await rollOfDay(ports, network, day), people, choices, reminded })
}

function wireReminded({ remind: whom, leftOut }: WhomToRemind, day: string, isQueued: boolean): Reminded {
  return {
    day,
    isQueued,
    remind: whom.map(({ person, way, to, gauges }) => ({
      personId: person.personId,
      name: person.name,
      way,
      to,
      language: person.language,
      gauges: gauges.map(({ code }) => code),
    })),
    leftOut: leftOut.map(({ person, why }) => ({ personId: person.personId, name: person.name, why })),
  }
}
