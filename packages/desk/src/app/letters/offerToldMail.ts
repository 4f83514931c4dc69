/** Tells a coordinator that somebody has offered: what is needed to answer, in their language. */
import type { Offer } from '@gaugewright/contract'

export function offerToldMail(
  language: 'en' | 'es',
  { network, offer, url }: { network: string; offer: Offer; url: string },
): { subject: string; text: string } {
  const reach = [offer.mail, offer.phone].filter((one) => one !== null).join(', ')
  const lines = [offer.name, reach, offer.place, offer.yardWords, offer.hours].filter((line) => line !== '')
  return language === 'es'
    ? {
        subject: `Alguien se ofrece a observar: ${network}`,
        text: [
          ...lines,
          `Todos los ofrecimientos están en Personas: ${url}`,
          'Este aviso llega como mucho una vez por hora.',
        ].join('\n\n'),
      }
    : {
        subject: `Somebody offers to observe: ${network}`,
        text: [...lines, `All offers stand on People: ${url}`, 'This note comes at most once an hour.'].join('\n\n'),
      }
}
