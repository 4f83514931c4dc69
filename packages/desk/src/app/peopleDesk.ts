/** Everything that People shows: offers with their states, and those who read a gauge. */
import type { PeopleDesk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { observerRows } from './people/observerRows.ts'
import { offerFigures } from './people/offerFigures.ts'
import { readCandidates } from './people/readCandidates.ts'
import { todayOf } from './people/todayOf.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function peopleDesk(
  ports: Pick<Ports, 'ledger' | 'access' | 'absences' | 'journal' | 'outgoingSettings' | 'clock'>,
): Promise<Answer<PeopleDesk>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id, name, unit, language } = network.value
  const candidates = await readCandidates(ports, id)
  return answered({
    network: { id, name, unit, language },
    today: todayOf(network.value, ports),
    candidates,
    observers: await observerRows(ports, network.value),
    figures: offerFigures(candidates, ports.clock.nowUtc()),
  })
}
