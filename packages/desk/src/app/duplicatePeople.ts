/** Who may be there twice, among people and open offers, and what speaks for it. Nothing is joined by itself. */
import type { DuplicatePeople } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { phonesOf } from './access/phones.ts'
import { type Answer, answered } from './answer.ts'
import { likeNames } from './people/likeNames.ts'
import { readCandidates } from './people/readCandidates.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

interface One {
  about: string
  name: string
  mail: string | null
  phone: string
  gauges: readonly string[]
}

export async function duplicatePeople(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'outgoingSettings' | 'clock'>,
): Promise<Answer<DuplicatePeople>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const phones = await phonesOf(ports)
  const digits = (phone: string | null | undefined) => (phone ?? '').replace(/\D/g, '').slice(-9)
  const all: One[] = (await ports.access.people()).map(({ id, name, mail, gauges }) => ({
    about: `person ${id}`,
    name,
    mail,
    phone: digits(phones.get(id)),
    gauges,
  }))
  for (const { id, offer, personId } of await readCandidates(ports, network.value.id)) {
    // Who has become a person is counted as that person.
    if (personId === null)
      all.push({ about: `candidate ${id}`, name: offer.name, mail: offer.mail, phone: digits(offer.phone), gauges: [] })
  }
  const pairs: DuplicatePeople['pairs'] = []
  for (const [index, a] of all.entries()) {
    for (const b of all.slice(index + 1)) {
      const reasons: DuplicatePeople['pairs'][number]['reasons'] = []
      if (a.mail !== null && a.mail === b.mail) reasons.push('same mail')
      if (a.phone.length >= 7 && a.phone === b.phone) reasons.push('same telephone')
      if (a.gauges.some((gauge) => b.gauges.includes(gauge))) reasons.push('same gauge')
      const names = likeNames(a.name, b.name)
      if (names !== null) reasons.push(names)
      // Households share a gauge or a telephone: these alone are no sign.
      const isHousehold = reasons.every((reason) => reason === 'same gauge' || reason === 'same telephone')
      if (!isHousehold)
        pairs.push({ a: { about: a.about, name: a.name }, b: { about: b.about, name: b.name }, reasons })
    }
  }
  return answered({ pairs: pairs.sort((x, y) => y.reasons.length - x.reasons.length).slice(0, 200) })
}
