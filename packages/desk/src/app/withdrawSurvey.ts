/** Takes a survey back, or puts it back. It stays in the ledger. */
import type { Actor, Site, WithdrawSurveyAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { ofKind } from './people/journalBody.ts'
import { writer } from './people/writeEntry.ts'
import { readSite } from './readSite.ts'
import { maySurvey } from './sites/maySurvey.ts'
import { siteBehind } from './sites/siteBehind.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function withdrawSurvey(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: WithdrawSurveyAsk & { actor: Actor },
  doer: Doer,
): Promise<Answer<Site>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const networkId = network.value.id
  const site = await siteBehind(ports, networkId, ask.about)
  if (!site.ok) return site
  const forbidden = maySurvey(ask.actor, site.value)
  if (forbidden !== null) return forbidden
  const surveys = ofKind(await ports.journal.about(networkId, site.value.abouts), 'survey')
  if (!surveys.some(({ entry }) => entry.id === ask.surveyId)) {
    return refused(
      'SURVEY_UNKNOWN',
      `the survey "${ask.surveyId.slice(0, 60)}"`,
      'Look at the surveys of the site again.',
    )
  }
  if (ask.undo) await ports.journal.putBack(networkId, ask.surveyId)
  else await ports.journal.takeBack(networkId, ask.surveyId, writer(doer), ports.clock.nowUtc())
  await writeTrail(ports, doer, { act: 'withdrawSurvey', subject: ask.surveyId })
  return await readSite(ports, { about: ask.about, actor: ask.actor })
}
