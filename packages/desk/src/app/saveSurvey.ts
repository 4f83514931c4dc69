/** A survey of a site. Earlier ones stay beside it for ever; the same id twice is one survey. */
import type { Actor, SaveSurveyAsk, Site } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { todayOf } from './people/todayOf.ts'
import { writer } from './people/writeEntry.ts'
import { readSite } from './readSite.ts'
import { appendSurvey } from './sites/appendSurvey.ts'
import { maySurvey } from './sites/maySurvey.ts'
import { siteBehind } from './sites/siteBehind.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function saveSurvey(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'photos' | 'redrawPhoto' | 'clock' | 'newId'>,
  ask: SaveSurveyAsk & { actor: Actor },
  doer: Doer,
): Promise<Answer<Site>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const site = await siteBehind(ports, network.value.id, ask.about)
  if (!site.ok) return site
  const forbidden = maySurvey(ask.actor, site.value)
  if (forbidden !== null) return forbidden
  const today = todayOf(network.value, ports)
  if (ask.surveyedOn > today) {
    return refused('SURVEY_DAY', `surveyed on ${ask.surveyedOn}`, `Give the day of the survey, ${today} at the latest.`)
  }
  const place = { networkId: network.value.id, about: site.value.about, by: writer(doer) }
  const saved = await appendSurvey(ports, place, ask)
  if (!saved.ok) return saved
  if (saved.value.isNew) await writeTrail(ports, doer, { act: 'saveSurvey', subject: ask.id })
  return await readSite(ports, { about: ask.about, actor: ask.actor })
}
