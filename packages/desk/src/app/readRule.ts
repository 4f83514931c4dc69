/** The rule that lets sure readings stand alone: what is in force, and every setting there was. */
import type { Rule } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'

export async function readRule(ports: Pick<Ports, 'ledger'>): Promise<Answer<Rule>> {
  const network = (await ports.ledger.networks())[0]
  if (network === undefined) {
    return refused(
      'LEDGER_EMPTY',
      'the ledger holds no network yet',
      'Run "gaugewright import" with a file of gauges and a file of readings, or "gaugewright demo".',
    )
  }
  const settings = await ports.ledger.ruleSettings(network.id)
  const { id, name, unit, timeZone, readingTime, language, docketBelow } = network
  return answered({
    network: { id, name, unit, timeZone, readingTime, language },
    letStandAt: settings.at(-1)?.letStandAt ?? null,
    docketBelow,
    history: settings.reverse(),
  })
}
