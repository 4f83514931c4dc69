/** Sites to look at again: those whose survey is over two years old, those asked for, those never surveyed. */

import type { SitesDue } from '@gaugewright/contract'
import { isDrawn } from '@gaugewright/science'
import type { JournalEntry } from '../ports/journal.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { standing } from './people/journalBody.ts'
import { todayOf } from './people/todayOf.ts'
import { dueOf } from './sites/dueOf.ts'
import { exposureOf } from './sites/surveyFrom.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

const order = ['asked', 'overdue', 'due', 'never surveyed', 'not yet']

export async function sitesDue(ports: Pick<Ports, 'ledger' | 'journal' | 'clock'>): Promise<Answer<SitesDue>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const networkId = network.value.id
  const today = todayOf(network.value, ports)
  const entries = await ports.journal.ofKinds(networkId, ['survey', 'survey asked', 'gauge given'])
  const gaugeOf = new Map(
    standing(entries, 'gauge given').map(({ entry, body }) => [entry.about, `gauge ${body.gaugeId}`]),
  )
  const bySite = new Map<string, JournalEntry[]>()
  for (const entry of entries) {
    const about = gaugeOf.get(entry.about) ?? entry.about
    bySite.set(about, [...(bySite.get(about) ?? []), entry])
  }
  const sites = (await ports.ledger.gauges(networkId))
    .filter(({ closedOn }) => closedOn === null)
    .map(({ id, code, name }) => {
      const own = bySite.get(`gauge ${id}`) ?? []
      const plan = standing(own, 'survey')
        .filter(({ body }) => isDrawn(body.plan))
        .sort((a, b) => (a.body.surveyedOn < b.body.surveyedOn ? -1 : 1))
        .at(-1)?.body.plan
      return {
        about: `gauge ${code}`,
        code,
        name,
        ...dueOf(own, today),
        class: plan === undefined ? null : (exposureOf(plan)?.class ?? null),
      }
    })
  sites.sort(
    (a, b) =>
      order.indexOf(a.due) - order.indexOf(b.due) ||
      (a.surveyedOn ?? '').localeCompare(b.surveyedOn ?? '') ||
      a.code.localeCompare(b.code),
  )
  return answered({ today, sites })
}
