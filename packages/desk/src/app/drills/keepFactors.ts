/**
 * The factors that drills give to gauges, kept beside the learned model, where the review finds them. Derived from the
 * journal alone: whoever loses them makes them anew.
 */
import type { Ports } from '../../ports/ports.ts'
import { standing } from '../people/journalBody.ts'
import { DRILL_FACTORS_KEY } from './drillFactorsKey.ts'
import { drillSettings, drillsFrom } from './readSittings.ts'

export async function keepDrillFactors(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock'>,
  networkId: string,
): Promise<void> {
  const settings = await drillSettings(ports, networkId)
  const entries = await ports.journal.ofKinds(networkId, ['sitting', 'refresher asked'])
  const given = standing(await ports.journal.ofKinds(networkId, ['gauge given']), 'gauge given')
  const factors: Record<string, number> = {}
  for (const { id, gauges } of await ports.access.people()) {
    const before = given.filter(({ body }) => body.personId === id).map(({ entry }) => entry.about)
    const about = [`person ${id}`, ...before]
    const own = entries.filter((entry) => about.includes(entry.about))
    if (own.length === 0) continue
    const { startingFactor } = drillsFrom(`person ${id}`, own, settings, ports.clock.nowUtc())
    for (const gauge of gauges) if (startingFactor !== 1) factors[gauge] = Math.round(startingFactor * 1000) / 1000
  }
  const body = JSON.stringify(factors)
  const kept = await ports.ledger.cached(networkId, DRILL_FACTORS_KEY)
  if (kept?.body !== body) await ports.ledger.saveCached(networkId, DRILL_FACTORS_KEY, '1', body)
}
