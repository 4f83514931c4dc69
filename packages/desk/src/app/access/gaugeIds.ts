import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'

/** Ids of gauges that are named by id or by code. */
export async function gaugeIds(ports: Pick<Ports, 'ledger'>, asked: readonly string[]): Promise<Answer<string[]>> {
  if (asked.length === 0) return answered([])
  const networks = await ports.ledger.networks()
  const gauges = (await Promise.all(networks.map(({ id }) => ports.ledger.gauges(id)))).flat()
  const found: string[] = []
  for (const name of asked) {
    const gauge = gauges.find(({ id, code }) => id === name || code.toLowerCase() === name.toLowerCase())
    if (gauge === undefined) {
      return refused('GAUGE_NOT_IN_NETWORK', `"${name}" is no gauge of this network`, 'Look at the list of gauges.')
    }
    found.push(gauge.id)
  }
  return answered([...new Set(found)])
}
