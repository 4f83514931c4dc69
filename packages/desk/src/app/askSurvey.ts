/** Asks for a new survey of a site before its time, with why: trees have grown, something was built, the gauge has drifted. */
import type { Actor, AskSurveyAsk, Site } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import type { Answer } from './answer.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { readSite } from './readSite.ts'
import { siteBehind } from './sites/siteBehind.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function askSurvey(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: AskSurveyAsk & { actor: Actor },
  doer: Doer,
): Promise<Answer<Site>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const site = await siteBehind(ports, network.value.id, ask.about)
  if (!site.ok) return site
  const body = { why: ask.why }
  await ports.journal.append([
    newEntry(ports, network.value.id, site.value.about, 'survey asked', body, { by: writer(doer) }),
  ])
  await writeTrail(ports, doer, { act: 'askSurvey', subject: site.value.about })
  return await readSite(ports, { about: ask.about, actor: ask.actor })
}
