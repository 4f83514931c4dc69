/**
 * Send a sign-in link by mail to an observer. Whoever asks is told the same whether the address is known or not. The link
 * works once, for fifteen minutes, in the browser that asked. Those who work at the desk have passwords and get none.
 */
import type { AskLinkAsk, LinkAsked } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { linkLetter } from './access/linkLetter.ts'
import { digestOf, newSecret } from './access/secrets.ts'
import { type Answer, answered } from './answer.ts'

export const LINK_MINUTES = 15

export async function askLink(
  ports: Pick<Ports, 'access' | 'clock' | 'newId' | 'outbox' | 'ledger'>,
  /** `browser`: secret that the asking browser keeps; `deskUrl`: where the desk is reached, without a slash at its end. */
  ask: AskLinkAsk & { browser: string; deskUrl: string },
): Promise<Answer<LinkAsked>> {
  const told = answered({ minutes: LINK_MINUTES })
  const person = await ports.access.personByMail(ask.mail)
  const network = (await ports.ledger.networks())[0]
  if (person === null || person.role !== 'observer' || network === undefined) return told
  const now = ports.clock.nowUtc()
  const endsAtUtc = new Date(Date.parse(now) + LINK_MINUTES * 60_000).toISOString()
  const secret = newSecret()
  await ports.access.saveLink({
    tokenHash: digestOf(secret),
    browserHash: digestOf(ask.browser),
    personId: person.id,
    askedAtUtc: now,
    endsAtUtc,
  })
  // Behind the number sign, so that it reaches no server's log and no other site.
  const letter = linkLetter(person.language, {
    name: person.name,
    network: network.name,
    url: `${ask.deskUrl}/sign-in#link=${secret}`,
    minutes: LINK_MINUTES,
  })
  const id = ports.newId()
  await ports.outbox.queue([
    {
      id,
      networkId: network.id,
      key: `sign-in ${id}`,
      purpose: 'sign-in',
      content: { kind: 'mail', to: ask.mail, headers: {}, ...letter },
      repeatable: true,
      isSecret: true,
      by: 'sign-in page',
      queuedAtUtc: now,
      notAfterUtc: endsAtUtc,
    },
  ])
  return told
}
