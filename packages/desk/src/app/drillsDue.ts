/** Who is to do drills: refreshers that were asked for or fall due, and observers who never passed. */
import type { DrillsDue } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { drillSettings, drillsFrom } from './drills/readSittings.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function drillsDue(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock'>,
): Promise<Answer<DrillsDue>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const settings = await drillSettings(ports, network.value.id)
  const entries = await ports.journal.ofKinds(network.value.id, ['sitting', 'refresher asked'])
  const people: DrillsDue['people'] = []
  for (const { id, name, role } of await ports.access.people()) {
    const about = `person ${id}`
    const own = entries.filter((entry) => entry.about === about)
    const { refresher, sittings } = drillsFrom(about, own, settings, ports.clock.nowUtc())
    const passedOn = sittings.find(({ isPassed }) => isPassed)?.atUtc.slice(0, 10) ?? null
    if (role === 'observer' && (refresher !== 'none' || passedOn === null))
      people.push({ about, name, passedOn, refresher })
  }
  return answered({ settings, people })
}
