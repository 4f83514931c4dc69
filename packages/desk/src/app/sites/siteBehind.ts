/** Which site is meant by `gauge CODE` or `candidate ID`: a gauge's surveys begin with those of the candidate who got it. */
import type { Gauge } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { standing } from '../people/journalBody.ts'
import { aboutCandidate, findCandidate } from '../people/readCandidates.ts'

export interface SiteBehind {
  /** What new entries are about. */
  about: string
  /** Everything in the journal about any of these is about the site. */
  abouts: string[]
  name: string
  gauge: Gauge | null
}

export async function siteBehind(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock'>,
  networkId: string,
  about: string,
): Promise<Answer<SiteBehind>> {
  const [kind, name = ''] = about.split(' ')
  const given = standing(await ports.journal.ofKinds(networkId, ['gauge given']), 'gauge given')
  if (kind === 'candidate') {
    const found = await findCandidate(ports, networkId, name)
    if (!found.ok) return found
    const gauge = found.value.gauge === null ? null : await ports.ledger.gauge(networkId, found.value.gauge.id)
    if (gauge !== null) return await siteBehind(ports, networkId, `gauge ${gauge.id}`)
    return answered({ about, abouts: [about], name: found.value.offer.name, gauge: null })
  }
  const gauge = (await ports.ledger.gauge(networkId, name)) ?? (await ports.ledger.gauge(networkId, name.toUpperCase()))
  if (gauge === null) {
    return refused(
      'GAUGE_NOT_IN_NETWORK',
      `the gauge "${name.slice(0, 60)}"`,
      'Give the code of a gauge of the network.',
    )
  }
  const own = `gauge ${gauge.id}`
  const before = given.filter(({ body }) => body.gaugeId === gauge.id).map(({ entry }) => entry.about)
  return answered({
    about: own,
    abouts: [own, ...before.filter((one) => one.startsWith(aboutCandidate('')))],
    name: gauge.name,
    gauge,
  })
}
