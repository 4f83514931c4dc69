/** A word was sent on an occasion, or is not wanted now; or that is taken back. */
import type { AnswerOccasionAsk, Holding } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { holding } from './holding.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function answerOccasion(
  ports: Pick<Ports, 'ledger' | 'access' | 'absences' | 'journal' | 'clock' | 'newId'>,
  ask: AnswerOccasionAsk,
  doer: Doer,
): Promise<Answer<Holding>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const networkId = network.value.id
  if ('undo' in ask) {
    await ports.journal.takeBack(networkId, ask.undo, writer(doer), ports.clock.nowUtc())
  } else {
    const gauge = await ports.ledger.gauge(networkId, ask.code)
    if (gauge === null) {
      return refused('GAUGE_NOT_IN_NETWORK', `the gauge "${ask.code}"`, 'Give the code of a gauge of the network.')
    }
    const body = { key: ask.key, how: ask.how }
    await ports.journal.append([
      newEntry(ports, networkId, `gauge ${gauge.id}`, 'occasion answered', body, { by: writer(doer) }),
    ])
  }
  await writeTrail(ports, doer, { act: 'answerOccasion', subject: 'undo' in ask ? ask.undo : ask.code })
  return await holding(ports)
}
