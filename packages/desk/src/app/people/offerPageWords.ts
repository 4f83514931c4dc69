import type { OfferPageWords } from '@gaugewright/contract'
import type { Ports } from '../../ports/ports.ts'
import { standing } from './journalBody.ts'

/** What the page says until the coordinator says something of their own. Closed: a desk invites nobody by itself. */
export const usualOfferPage: OfferPageWords = {
  isOpen: false,
  keepMonths: 12,
  en: [
    'Would you read a rain gauge for us? Every morning at about seven you look at a plastic tube in your garden and send what it caught. It takes two minutes. A zero counts as much as a flood.',
    'You need a place under the open sky that is not crowded by trees and walls. We help to find it, send the gauge, and show how it is read.',
    'Your name, address and the exact place stay with us; on maps a gauge stands within about half a kilometre. Never go out to a gauge in lightning, hail or high water.',
  ].join('\n\n'),
  es: [
    '¿Leería un pluviómetro para nosotros? Cada mañana, hacia las siete, se mira un tubo de plástico en el jardín y se envía lo recogido. Son dos minutos. Un cero vale tanto como una riada.',
    'Hace falta un lugar a cielo abierto, sin árboles ni muros encima. Ayudamos a encontrarlo, enviamos el pluviómetro y enseñamos a leerlo.',
    'Su nombre, su dirección y el lugar exacto quedan entre nosotros; en los mapas el pluviómetro aparece a medio kilómetro, más o menos. No salga nunca al pluviómetro con rayos, granizo o crecida.',
  ].join('\n\n'),
}

export async function offerPageWords(ports: Pick<Ports, 'journal'>, networkId: string): Promise<OfferPageWords> {
  const set = standing(await ports.journal.ofKinds(networkId, ['offer page']), 'offer page')
  return set.at(-1)?.body ?? usualOfferPage
}
