/** The gauges that whoever asks reads. */
import type { Actor, MyGauges } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'

export async function myGauges({ ledger }: Pick<Ports, 'ledger'>, ask: { actor: Actor }): Promise<Answer<MyGauges>> {
  const network = (await ledger.networks())[0]
  const gauges = network === undefined ? [] : await ledger.gauges(network.id)
  const own = gauges.filter(({ id }) => ask.actor.gauges.includes(id))
  return answered({ gauges: own.map(({ code, name }) => ({ code, name })) })
}
