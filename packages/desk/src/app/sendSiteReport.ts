/** Sends a site's page to its observer or candidate, as a file that goes with the letter about surveys. */
import type { Actor, Contacts, ReadSiteAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import type { Doer } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { previewLetter } from './previewLetter.ts'
import { sendLetter } from './sendLetter.ts'
import { siteReport } from './siteReport.ts'
import { siteBehind } from './sites/siteBehind.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function sendSiteReport(
  ports: Pick<
    Ports,
    'ledger' | 'access' | 'journal' | 'outbox' | 'outgoingSettings' | 'outgoingSecrets' | 'clock' | 'newId'
  >,
  ask: ReadSiteAsk & { actor: Actor; deskUrl: string | null },
  doer: Doer,
): Promise<Answer<Contacts>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const site = await siteBehind(ports, network.value.id, ask.about)
  if (!site.ok) return site
  const { gauge } = site.value
  const reader =
    gauge === null ? undefined : (await ports.access.people()).find(({ gauges }) => gauges.includes(gauge.id))
  const about = gauge === null ? ask.about : reader === undefined ? null : `person ${reader.id}`
  if (about === null) {
    return refused(
      'MAIL_ADDRESS_MISSING',
      `nobody among people reads ${gauge?.code ?? 'the gauge'}`,
      'Add the observer under People, or print the page.',
    )
  }
  const letter = await previewLetter(ports, { about, step: 'site agreed', coordinator: ask.actor.name })
  if (!letter.ok) return letter
  const report = await siteReport(ports, { ...ask, language: letter.value.language })
  if (!report.ok) return report
  const { html, fileName } = report.value
  const words = texts[letter.value.language](network.value.name, site.value.name)
  const file = { name: fileName, mediaType: 'text/html; charset=utf-8', base64: Buffer.from(html).toString('base64') }
  return await sendLetter(
    ports,
    { about, step: 'site agreed', id: ports.newId(), ...words, deskUrl: ask.deskUrl, attachments: [file] },
    doer,
  )
}

const texts = {
  en: (network: string, site: string) => ({
    subject: `Your site, on one page: ${network}`,
    text: `Hello,\n\nhere is the page about the site of ${site}. It opens in any browser and prints on one sheet.\n\nWith kind regards\n${network}`,
  }),
  es: (network: string, site: string) => ({
    subject: `Su lugar, en una hoja: ${network}`,
    text: `Hola:\n\nAquí va la hoja sobre el lugar de ${site}. Se abre en cualquier navegador y se imprime en una página.\n\nUn saludo cordial\n${network}`,
  }),
}
