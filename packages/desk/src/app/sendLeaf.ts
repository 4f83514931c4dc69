/** Sends an observer their page as a file that goes with a letter. */
import type { Actor, Contacts, LeafAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import type { Doer } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { leaf } from './leaf.ts'
import { previewLetter } from './previewLetter.ts'
import { sendLetter } from './sendLetter.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function sendLeaf(
  ports: Pick<
    Ports,
    'ledger' | 'access' | 'absences' | 'journal' | 'outbox' | 'outgoingSettings' | 'outgoingSecrets' | 'clock' | 'newId'
  >,
  ask: LeafAsk & { actor: Actor; deskUrl: string | null },
  doer: Doer,
): Promise<Answer<Contacts>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const page = await leaf(ports, ask)
  if (!page.ok) return page
  const gauge = await ports.ledger.gauge(network.value.id, ask.gauge)
  const reader = (await ports.access.people()).find(({ gauges }) => gauge !== null && gauges.includes(gauge.id))
  if (reader === undefined) {
    return refused(
      'MAIL_ADDRESS_MISSING',
      `nobody among people reads ${gauge?.code ?? ask.gauge}`,
      'Add the observer under People, or print the page.',
    )
  }
  const about = `person ${reader.id}`
  const letter = await previewLetter(ports, { about, step: 'leaf', coordinator: ask.actor.name, occasion: ask.period })
  if (!letter.ok) return letter
  const { subject, text } = letter.value
  const { html, fileName: name } = page.value
  const file = { name, mediaType: 'text/html; charset=utf-8', base64: Buffer.from(html).toString('base64') }
  const id = `leaf ${gauge?.id ?? ''} ${ask.period}`
  return await sendLetter(
    ports,
    { about, step: 'leaf', id, subject, text, deskUrl: ask.deskUrl, attachments: [file] },
    doer,
  )
}
