/** The coordinator's own words on the public page, and whether it takes offers. Earlier words stay in the ledger. */
import type { OfferPageSettings, OfferPageWords } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { readOfferPage } from './readOfferPage.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function setOfferPage(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: OfferPageWords,
  doer: Doer,
): Promise<Answer<OfferPageSettings>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  if (ask.isOpen && ask[network.value.language].trim() === '') {
    return refused('OFFER_PAGE_EMPTY', 'an open page without words', 'Say in a few sentences what you ask of people.')
  }
  await ports.journal.append([newEntry(ports, network.value.id, 'network', 'offer page', ask, { by: writer(doer) })])
  await writeTrail(ports, doer, { act: 'setOfferPage', subject: null })
  return await readOfferPage(ports)
}
