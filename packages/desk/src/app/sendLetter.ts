/**
 * Sends a letter as it was read and edited. It waits in the outbox, durably, until it goes; its line stands in the log. A
 * link in it opens the person's own page: of their offer, or of their gauge. The same letter twice is one.
 */
import type { Contacts, LetterStep, SendLetterAsk } from '@gaugewright/contract'
import type { MailContent } from '../ports/outbox.ts'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { fillLetter, unknownPlaceholders } from './letters/fillLetter.ts'
import { listContacts } from './listContacts.ts'
import { carriersNow } from './outgoing/carriersNow.ts'
import { markAnswered } from './people/markAnswered.ts'
import { ownLink } from './people/ownLink.ts'
import { personBehind } from './people/personBehind.ts'
import { aboutCandidate } from './people/readCandidates.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { mailAdvice } from './sendTestMail.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

/** Where on the observer's page a letter's link leads, if not to its beginning. */
const placeOnPage: Partial<Record<LetterStep, string>> = { drills: '#drills', refresher: '#drills', survey: '#site' }

export interface LetterExtras {
  /** Where people reach the desk, without a slash at its end; null where nobody said so. */
  deskUrl: string | null
  attachments?: MailContent['attachments']
}

export async function sendLetter(
  ports: Pick<
    Ports,
    'ledger' | 'access' | 'journal' | 'outbox' | 'outgoingSettings' | 'outgoingSecrets' | 'clock' | 'newId'
  >,
  ask: SendLetterAsk & LetterExtras,
  doer: Doer,
): Promise<Answer<Contacts>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const networkId = network.value.id
  const person = await personBehind(ports, networkId, ask.about)
  if (!person.ok) return person
  const { mail, name, candidateId, gauge } = person.value
  if (mail === null) {
    return refused(
      'MAIL_ADDRESS_MISSING',
      `${name} has no mail address`,
      'Print the letter or telephone, and note it in the log.',
    )
  }
  const { mail: carrier } = await carriersNow(ports, networkId)
  if (carrier.code !== null) return refused(carrier.code, 'mail is not ready to go out', mailAdvice(carrier.code))
  const unknown = unknownPlaceholders(`${ask.subject}\n${ask.text}`)
  const asksLink = `${ask.subject}\n${ask.text}`.includes('{link}')
  const left = [
    ...unknown,
    ...(/\{(occasion|name|network|coordinator|gauge|code)\}/.test(`${ask.subject}\n${ask.text}`) ? ['…'] : []),
  ]
  if (left.length > 0) {
    return refused(
      'LETTER_HAS_GAPS',
      left.map((one) => `{${one}}`).join(', '),
      'Fill what stands in braces, or take it out.',
    )
  }
  if (asksLink && ask.deskUrl === null) {
    return refused(
      'DESK_ADDRESS_MISSING',
      'a letter with a link, and no address of the desk',
      'Set where people reach the desk under reminders in Settings, or take the link out.',
    )
  }
  const link =
    asksLink && ask.deskUrl !== null && gauge === null && candidateId !== null
      ? ownLink(ports, networkId, aboutCandidate(candidateId), ask.deskUrl)
      : null
  const url = link?.url ?? (ask.deskUrl === null ? '' : `${ask.deskUrl}/my/${placeOnPage[ask.step] ?? ''}`)
  const letter = fillLetter({ subject: ask.subject, text: ask.text }, { link: url })
  const contact = newEntry(
    ports,
    networkId,
    ask.about,
    'contact',
    { way: 'letter', text: `${ask.subject}\n\n${ask.text}`, outgoingId: ask.id },
    { by: writer(doer), id: `letter ${ask.id}` },
  )
  // The link must open before the mail can be read.
  await ports.journal.append(link === null ? [contact] : [contact, link.entry])
  const { queued } = await ports.outbox.queue([
    {
      id: ask.id,
      networkId,
      key: `letter ${ask.id}`,
      purpose: 'letter',
      content: {
        kind: 'mail',
        to: mail,
        headers: {},
        ...letter,
        ...(ask.attachments !== undefined && { attachments: ask.attachments }),
      },
      repeatable: false,
      isSecret: link !== null,
      by: doer.personId ?? 'coordinator',
      queuedAtUtc: ports.clock.nowUtc(),
      notAfterUtc: null,
    },
  ])
  await markAnswered(ports, networkId, candidateId, doer)
  if (queued > 0) await writeTrail(ports, doer, { act: 'sendLetter', subject: ask.about })
  return await listContacts(ports, { about: ask.about })
}
