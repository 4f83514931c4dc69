/**
 * File an urgent report: durable when answered, and on every open desk at once. Sent again it is there already. Where the
 * office's rule says so, it and what it makes likelier go on without a person; trouble with that never refuses the report.
 */
import type { FileUrgent, FileUrgentAsk } from '@gaugewright/contract'
import { parseInstant } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { applyPassOnRule } from './urgent/applyPassOnRule.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export type FileUrgentPorts = Pick<Ports, 'ledger' | 'urgent' | 'outbox' | 'clock' | 'newId'>

/** How far ahead of the desk's clock a sight may lie: phones' clocks and their zones are set by people. */
const mostAheadMs = 10 * 60_000
const oldestMs = 7 * 86_400_000

export async function fileUrgent(
  ports: FileUrgentPorts,
  ask: FileUrgentAsk & { byPersonId?: string | null; onTrouble?: (error: unknown) => void },
): Promise<Answer<FileUrgent>> {
  const { byPersonId = null, onTrouble, ...report } = ask
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { where, seenAtUtc } = report
  if (where.kind === 'gauge') {
    const gauges = await ports.ledger.gauges(network.value.id)
    if (!gauges.some(({ id }) => id === where.gaugeId)) {
      return refused('GAUGE_NOT_IN_NETWORK', `the gauge "${where.gaugeId}"`, 'Choose a gauge, or mark the place.')
    }
  }
  const nowUtc = ports.clock.nowUtc()
  const aheadMs = (parseInstant(seenAtUtc) ?? 0) - (parseInstant(nowUtc) ?? 0)
  if (aheadMs > mostAheadMs || aheadMs < -oldestMs) {
    return refused(
      'URGENT_TIME_OUTSIDE',
      `seen at ${seenAtUtc}; here it is ${nowUtc}`,
      'Give the time at which it was seen, within the last seven days. Tell older things to the coordinator.',
    )
  }
  const filed = await ports.urgent.file(network.value.id, {
    id: report.id,
    reportId: report.updates ?? report.id,
    atUtc: nowUtc,
    by: report.by,
    byPersonId,
    what: 'filed',
    report,
  })
  if (!filed.already) {
    try {
      await applyPassOnRule(ports, network.value, filed.event.reportId)
    } catch (error) {
      onTrouble?.(error)
    }
  }
  return answered({ id: report.id, receivedAtUtc: filed.event.atUtc, already: filed.already })
}
