/** Takes back a look, a closing, or that a text was copied; both stay. What has gone out cannot be called back. */
import type { UndoUrgentAsk, UrgentNow } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, refused } from './answer.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'
import { type UrgentNowPorts, urgentNow } from './urgentNow.ts'

export async function undoUrgent(
  ports: UrgentNowPorts & Pick<Ports, 'newId'>,
  ask: UndoUrgentAsk & { byPersonId?: string | null },
): Promise<Answer<UrgentNow>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const networkId = network.value.id
  const event = await ports.urgent.event(networkId, ask.eventId)
  if (event === null || event.what === 'filed' || event.what === 'undone') {
    return refused('URGENT_EVENT_UNKNOWN', `the event "${ask.eventId}"`, 'Look at the report again.')
  }
  const events = await ports.urgent.eventsOf(networkId, event.reportId)
  if (events.some((other) => other.what === 'undone' && other.target === event.id)) {
    return refused('URGENT_ALREADY_UNDONE', `the event "${ask.eventId}"`, 'Nothing needs to be done.')
  }
  if (event.what === 'passed on' && event.way !== 'copied') {
    return refused(
      'URGENT_GONE_OUT',
      `passed on by ${event.way} at ${event.atUtc}`,
      'Pass a correction on, or discard the message in Outgoing while it still waits there.',
    )
  }
  await ports.urgent.append(networkId, {
    id: ports.newId(),
    reportId: event.reportId,
    atUtc: ports.clock.nowUtc(),
    by: ask.by,
    byPersonId: ask.byPersonId ?? null,
    what: 'undone',
    target: event.id,
  })
  return urgentNow(ports, { hours: 24 })
}
