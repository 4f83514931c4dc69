/** Somebody at the desk has looked at an urgent report. The same person twice is one look. */
import type { MarkSeenAsk, UrgentNow } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import type { Answer } from './answer.ts'
import { knownReport } from './urgent/knownReport.ts'
import { type UrgentNowPorts, urgentNow } from './urgentNow.ts'

export async function markSeen(
  ports: UrgentNowPorts & Pick<Ports, 'newId'>,
  ask: MarkSeenAsk & { byPersonId?: string | null },
): Promise<Answer<UrgentNow>> {
  const known = await knownReport(ports, ask.reportId)
  if (!known.ok) return known
  const { networkId, now } = known.value
  if (!now.seenBy.some(({ by }) => by === ask.by)) {
    await ports.urgent.append(networkId, {
      id: ports.newId(),
      reportId: now.id,
      atUtc: ports.clock.nowUtc(),
      by: ask.by,
      byPersonId: ask.byPersonId ?? null,
      what: 'seen',
    })
  }
  return urgentNow(ports, { hours: 24 })
}
