/** A letter to one person, filled as it would go, to be read and edited before it is sent. The link is made when it goes. */
import type { LetterPreview, PreviewLetterAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { fillLetter } from './letters/fillLetter.ts'
import { letterTemplate } from './letters/letterTemplate.ts'
import { carriersNow } from './outgoing/carriersNow.ts'
import { personBehind } from './people/personBehind.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function previewLetter(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outgoingSettings' | 'outgoingSecrets' | 'clock'>,
  ask: PreviewLetterAsk & { coordinator: string },
): Promise<Answer<LetterPreview>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id: networkId, name: networkName } = network.value
  const person = await personBehind(ports, networkId, ask.about)
  if (!person.ok) return person
  const { name, language, mail, gauge } = person.value
  const letter = fillLetter(await letterTemplate(ports, networkId, ask.step, language), {
    name,
    network: networkName,
    coordinator: ask.coordinator,
    gauge: gauge?.name ?? '',
    code: gauge?.code ?? '',
    ...(ask.occasion !== undefined && { occasion: ask.occasion }),
  })
  const { mail: carrier } = await carriersNow(ports, networkId)
  return answered({ about: ask.about, step: ask.step, language, to: mail, ...letter, canSend: carrier.isReady })
}
