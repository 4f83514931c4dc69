/** The coded text of an urgent report, to look at and to copy. Nothing is recorded. */
import type { CodedUrgent, PassOnForm } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { codedText } from './urgent/codedText.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'
import { knownReport } from './urgent/knownReport.ts'
import { urgentSettingsOf } from './urgent/usualUrgentSettings.ts'

export async function codedUrgent(
  ports: Pick<Ports, 'ledger' | 'urgent' | 'clock'>,
  ask: { reportId: string; form: PassOnForm },
): Promise<Answer<CodedUrgent>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const known = await knownReport(ports, ask.reportId)
  if (!known.ok) return known
  const coded = await codedText(ports, {
    network: network.value,
    gauges: await ports.ledger.gauges(network.value.id),
    settings: await urgentSettingsOf(ports, network.value.id),
    now: known.value.now,
    form: ask.form,
  })
  return coded.ok ? answered({ reportId: ask.reportId, form: ask.form, ...coded.value }) : coded
}
