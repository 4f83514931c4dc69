/**
 * An offer from the public page. It lands on People at once; the person gets a mail with a link to a page of their own, and
 * coordinators are told, at most once an hour each. Whoever asks learns nothing about who is known here.
 */
import type { MakeOfferAsk, OfferMade } from '@gaugewright/contract'
import type { NewOutgoing } from '../ports/outbox.ts'
import type { Ports } from '../ports/ports.ts'
import { newSecret } from './access/secrets.ts'
import { type Answer, answered, refused } from './answer.ts'
import { fillLetter } from './letters/fillLetter.ts'
import { letterTemplate } from './letters/letterTemplate.ts'
import { offerToldMail } from './letters/offerToldMail.ts'
import { offerPageWords } from './people/offerPageWords.ts'
import { type TicketFault, ticketFault, type UsedTickets } from './people/offerTicket.ts'
import { ownLink } from './people/ownLink.ts'
import { aboutCandidate } from './people/readCandidates.ts'
import { newEntry } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

const advice: Record<TicketFault, string> = {
  forged: 'Open the page again and send the form from there; what you typed is kept.',
  'too soon': 'Wait a few seconds, then send it again.',
  'too late': 'Open the page again; what you typed is kept.',
  puzzle: 'Let the page work for a moment, then send it again.',
}

export async function makeOffer(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outbox' | 'outgoingSettings' | 'clock' | 'newId'>,
  /** `deskUrl`: where people reach the desk, without a slash at its end. */
  ask: MakeOfferAsk & { deskUrl: string; used: UsedTickets },
): Promise<Answer<OfferMade>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id: networkId, name: networkName } = network.value
  const nowUtc = ports.clock.nowUtc()
  const about = aboutCandidate(ask.id)
  const received = answered({ received: true as const })
  if ((await ports.journal.about(networkId, [about])).length > 0) return received
  if (!(await offerPageWords(ports, networkId)).isOpen) {
    return refused('OFFERS_CLOSED', 'offers are not taken now', 'Write to the network, or come back later.')
  }
  const secret = await ports.outgoingSettings.linkSecret(networkId, newSecret())
  const fault = ticketFault(secret, networkId, ask, Date.parse(nowUtc))
  if (fault !== null) return refused('OFFER_TICKET', `the form’s ticket: ${fault}`, advice[fault])
  // A field that no person sees was filled: answered as if all were well, and thrown away.
  if (ask.website !== '') return received
  if (!ask.used.use(ask.ticket, Date.parse(nowUtc))) {
    return refused('OFFER_TICKET', 'the form’s ticket: used', advice.forged)
  }
  const link = ownLink(ports, networkId, about, ask.deskUrl)
  await ports.journal.append([
    newEntry(
      ports,
      networkId,
      about,
      'offer',
      { offer: ask.offer, door: 'public page' },
      { by: '', id: `offer ${ask.id}` },
    ),
    link.entry,
  ])
  const mails: NewOutgoing[] = []
  const { mail, language, name } = ask.offer
  if (mail !== null) {
    const template = await letterTemplate(ports, networkId, 'offer received', language)
    const letter = fillLetter(template, { name, network: networkName, link: link.url })
    mails.push(message(ports, networkId, `offer received ${ask.id}`, mail, letter, true))
  }
  for (const person of await ports.access.people()) {
    if (person.role !== 'coordinator' || person.mail === null) continue
    const letter = offerToldMail(person.language, {
      network: networkName,
      offer: ask.offer,
      url: `${ask.deskUrl}/people`,
    })
    mails.push(message(ports, networkId, `offer told ${person.id} ${nowUtc.slice(0, 13)}`, person.mail, letter, false))
  }
  await ports.outbox.queue(mails)
  return received
}

function message(
  ports: Pick<Ports, 'clock' | 'newId'>,
  networkId: string,
  key: string,
  to: string,
  letter: { subject: string; text: string },
  isSecret: boolean,
): NewOutgoing {
  return {
    id: ports.newId(),
    networkId,
    key,
    purpose: 'letter',
    content: { kind: 'mail', to, headers: { 'Auto-Submitted': 'auto-replied' }, ...letter },
    repeatable: false,
    isSecret,
    by: 'public page',
    queuedAtUtc: ports.clock.nowUtc(),
    notAfterUtc: null,
  }
}
