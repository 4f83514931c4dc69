/** What the observer's form must know before anything is sent: whose gauge it is, in which unit, whom to call. */
import type { Actor, UrgentForm, UrgentFormAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { ownGauge } from './my/ownGauge.ts'

/** Without a gauge in the ask: the asker's own, where there is one; else the form asks for a place. */
export async function urgentForm(
  { ledger, urgent, clock }: Pick<Ports, 'ledger' | 'urgent' | 'clock'>,
  ask: UrgentFormAsk & { actor: Actor },
): Promise<Answer<UrgentForm>> {
  const network = (await ledger.networks())[0]
  if (network === undefined) {
    return refused(
      'LEDGER_EMPTY',
      'the ledger holds no network yet',
      'Run "gaugewright import" with a file of gauges, or "gaugewright demo".',
    )
  }
  const wanted = ask.gauge ?? ask.actor.gauges[0]
  const own = wanted === undefined ? null : await ownGauge({ ledger, clock }, ask.actor, wanted)
  if (own !== null && !own.ok) return own
  const { id, name, unit, timeZone, language } = network
  const gauge = own?.value.gauge
  return answered({
    network: { id, name, unit, timeZone, language },
    emergencyNumber: (await urgent.settings(id)).at(-1)?.settings.emergencyNumber ?? null,
    gauge: gauge === undefined ? null : { id: gauge.id, code: gauge.code, name: gauge.name },
    observerName: gauge?.observerName ?? (ask.actor.role === 'observer' ? ask.actor.name : null),
  })
}
