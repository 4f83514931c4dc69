/** A site on one page, as one HTML file, from its latest survey that stands. */

import type { Actor, ReadSiteAsk } from '@gaugewright/contract'
import { lengthUnitOf, printSiteReport } from '@gaugewright/drawings'
import { isDrawn } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { readSite } from './readSite.ts'
import { siteBehind } from './sites/siteBehind.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function siteReport(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock'>,
  ask: ReadSiteAsk & { actor: Actor; language?: 'en' | 'es' },
): Promise<Answer<{ html: string; fileName: string }>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const behind = await siteBehind(ports, network.value.id, ask.about)
  if (!behind.ok) return behind
  const site = await readSite(ports, ask)
  if (!site.ok) return site
  const standing = site.value.surveys.filter(({ isTakenBack, plan }) => !isTakenBack && isDrawn(plan))
  const html = printSiteReport({
    language: ask.language ?? network.value.language,
    unit: lengthUnitOf(network.value.unit),
    name: behind.value.gauge === null ? site.value.name : `${site.value.name} (${behind.value.gauge.code})`,
    network: network.value.name,
    survey: standing[0] ?? null,
    history: standing.map(({ surveyedOn, exposure }) => ({
      surveyedOn,
      class: exposure?.class ?? null,
      worstDeg: exposure?.worstDeg ?? null,
      blockedShare: exposure?.blockedShare ?? null,
    })),
  })
  return answered({ html, fileName: `site-${behind.value.gauge?.code ?? 'candidate'}.html` })
}
