import type { DrillsOfPerson, SittingAsk } from '@gaugewright/contract'
import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered } from '../answer.ts'
import { markTrained } from '../people/markTrained.ts'
import { newEntry } from '../people/writeEntry.ts'
import { keepDrillFactors } from './keepFactors.ts'
import { markSitting } from './markSitting.ts'
import { drillSettings, drillsFrom } from './readSittings.ts'

/** Keeps a sitting about a person or candidate; whoever passed is trained. The same id twice is one sitting. */
export async function keepSitting(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  networkId: string,
  who: { personId: string } | { candidateId: string },
  ask: SittingAsk,
): Promise<Answer<DrillsOfPerson>> {
  const about = 'personId' in who ? `person ${who.personId}` : `candidate ${who.candidateId}`
  const settings = await drillSettings(ports, networkId)
  const by = 'personId' in who ? who.personId : ''
  const body = markSitting(ask, settings.passMark)
  await ports.journal.append([
    newEntry(ports, networkId, about, 'sitting', body, { by, id: `sitting ${about} ${ask.id}` }),
  ])
  const drills = drillsFrom(about, await ports.journal.about(networkId, [about]), settings, ports.clock.nowUtc())
  if (drills.sittings[0]?.isPassed === true) await markTrained(ports, networkId, who)
  await keepDrillFactors(ports, networkId)
  return answered(drills)
}
