/** Pass an urgent report on: to one of the office's destinations, or as text that a person has copied. */
import type { PassOnAsk, UrgentNow } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, refused } from './answer.ts'
import { codedText } from './urgent/codedText.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'
import { knownReport } from './urgent/knownReport.ts'
import { queuePassOn } from './urgent/queuePassOn.ts'
import { urgentSettingsOf } from './urgent/usualUrgentSettings.ts'
import { type UrgentNowPorts, urgentNow } from './urgentNow.ts'

export async function passOn(
  ports: UrgentNowPorts & Pick<Ports, 'outbox' | 'newId'>,
  ask: PassOnAsk & { byPersonId?: string | null },
): Promise<Answer<UrgentNow>> {
  const found = await firstNetwork(ports)
  if (!found.ok) return found
  const network = found.value
  const known = await knownReport(ports, ask.reportId)
  if (!known.ok) return known
  const { now } = known.value
  const settings = await urgentSettingsOf(ports, network.id)
  const destination = settings.destinations.find(({ name }) => name === ask.destination)
  if (ask.destination !== null && destination === undefined) {
    return refused(
      'DESTINATION_UNKNOWN',
      `the destination "${ask.destination}"`,
      'Choose one of those in Settings, or ask the coordinator to add it.',
    )
  }
  const gauges = await ports.ledger.gauges(network.id)
  const coded = await codedText(ports, { network, gauges, settings, now, form: ask.form })
  if (!coded.ok) return coded
  const doer = { by: ask.by, byPersonId: ask.byPersonId ?? null }
  const { text } = coded.value
  if (destination !== undefined) {
    await queuePassOn(ports, { network, now, form: ask.form, destination, text, doer })
  } else {
    const happened = { id: ports.newId(), reportId: now.id, atUtc: ports.clock.nowUtc(), ...doer }
    const copied = { form: ask.form, way: 'copied', to: null, text, outgoingId: null } as const
    await ports.urgent.append(network.id, { ...happened, what: 'passed on', ...copied })
  }
  return urgentNow(ports, { hours: 24 })
}
