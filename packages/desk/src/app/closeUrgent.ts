/** An urgent report needs nothing more. It stays, with why; closing can be taken back. */
import type { CloseUrgentAsk, UrgentNow } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, refused } from './answer.ts'
import { knownReport } from './urgent/knownReport.ts'
import { type UrgentNowPorts, urgentNow } from './urgentNow.ts'

export async function closeUrgent(
  ports: UrgentNowPorts & Pick<Ports, 'newId'>,
  ask: CloseUrgentAsk & { byPersonId?: string | null },
): Promise<Answer<UrgentNow>> {
  const known = await knownReport(ports, ask.reportId)
  if (!known.ok) return known
  const { networkId, now } = known.value
  if (now.closed !== null) {
    return refused(
      'URGENT_ALREADY_CLOSED',
      `closed by ${now.closed.by} at ${now.closed.atUtc}`,
      'Take that back first if it needs something after all.',
    )
  }
  await ports.urgent.append(networkId, {
    id: ports.newId(),
    reportId: now.id,
    atUtc: ports.clock.nowUtc(),
    by: ask.by,
    byPersonId: ask.byPersonId ?? null,
    what: 'closed',
    why: ask.why,
  })
  return urgentNow(ports, { hours: 24 })
}
