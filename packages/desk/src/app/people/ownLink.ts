/** The link to the page of a person's own offer: a secret of 256 bits behind the number sign, kept as its digest. */
import type { NewJournalEntry } from '../../ports/journal.ts'
import type { Ports } from '../../ports/ports.ts'
import { digestOf, newSecret } from '../access/secrets.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { standing } from './journalBody.ts'
import { newEntry } from './writeEntry.ts'

const GOOD_DAYS = 180

export function ownLink(
  ports: Pick<Ports, 'clock' | 'newId'>,
  networkId: string,
  about: string,
  deskUrl: string,
): { entry: NewJournalEntry; url: string } {
  const secret = newSecret()
  const endsAtUtc = new Date(Date.parse(ports.clock.nowUtc()) + GOOD_DAYS * 86_400_000).toISOString()
  const body = { digest: digestOf(secret), endsAtUtc }
  return {
    entry: newEntry(ports, networkId, about, 'own link', body, { by: '' }),
    url: `${deskUrl}/offer#mine=${secret}`,
  }
}

/** Id of the candidate whose link this is. The same answer whatever is wrong with it. */
export async function candidateOfLink(
  ports: Pick<Ports, 'journal' | 'clock'>,
  networkId: string,
  secret: string,
): Promise<Answer<string>> {
  const digest = digestOf(secret)
  const links = standing(await ports.journal.ofKinds(networkId, ['own link']), 'own link')
  const found = links.find(({ body }) => body.digest === digest)
  if (found !== undefined && Date.parse(found.body.endsAtUtc) > Date.parse(ports.clock.nowUtc())) {
    return answered(found.entry.about.slice('candidate '.length))
  }
  return refused(
    'OFFER_LINK_NOT_VALID',
    'a link that opens nothing',
    'Open it again from the mail, or write to the network.',
  )
}
