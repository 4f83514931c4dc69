/** A site with every survey that was made of it, newest first: for the desk, and for whoever reads its gauge. */
import type { Actor, ReadSiteAsk, Site } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { ofKind } from './people/journalBody.ts'
import { namesOfPeople } from './people/nameOf.ts'
import { todayOf } from './people/todayOf.ts'
import { dueOf } from './sites/dueOf.ts'
import { maySurvey } from './sites/maySurvey.ts'
import { siteBehind } from './sites/siteBehind.ts'
import { surveyFrom } from './sites/surveyFrom.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function readSite(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock'>,
  ask: ReadSiteAsk & { actor: Actor },
): Promise<Answer<Site>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id: networkId, unit, language } = network.value
  const site = await siteBehind(ports, networkId, ask.about)
  if (!site.ok) return site
  const forbidden = maySurvey(ask.actor, site.value)
  if (forbidden !== null) return forbidden
  const entries = await ports.journal.about(networkId, site.value.abouts)
  const nameOf = await namesOfPeople(ports)
  const today = todayOf(network.value, ports)
  const surveys = ofKind(entries, 'survey').map((one) => surveyFrom(one, nameOf))
  surveys.sort((a, b) => (`${a.surveyedOn} ${a.savedAtUtc}` < `${b.surveyedOn} ${b.savedAtUtc}` ? 1 : -1))
  return answered({
    about: ask.about,
    name: site.value.name,
    unit,
    language,
    today,
    due: dueOf(entries, today).due,
    surveys,
  })
}
