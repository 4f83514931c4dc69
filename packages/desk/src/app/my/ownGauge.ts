/** The gauge that an observer's page is about: one that the asker reads, or any for those who decide at the desk. */
import { type Actor, isAtLeast } from '@gaugewright/contract'
import { epochDayFromIso, formatInstant, type ObservingDays, observingDays } from '@gaugewright/science'
import type { Gauge, Ledger, NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { type Answer, answered, refused } from '../answer.ts'
import { demoNetworkId } from '../demoNetworkId.ts'

export interface OwnGauge {
  network: NetworkSettings
  gauge: Gauge
  days: ObservingDays
  nowUtc: string
}

/** Minutes after the reading hour at which the demo stands still. */
const DEMO_MINUTES = 20
const MS_PER_MINUTE = 60_000

/**
 * @param asked  code in any case, or id
 * @returns GAUGE_NOT_YOURS alike for a gauge of somebody else and for one that is not there: nothing is told of others
 */
export async function ownGauge(
  { ledger, clock }: Pick<Ports, 'ledger' | 'clock'>,
  actor: Actor,
  asked: string,
): Promise<Answer<OwnGauge>> {
  const network = (await ledger.networks())[0]
  const gauge = network === undefined ? null : await gaugeNamed(ledger, network.id, asked)
  const isAtDesk = isAtLeast(actor.role, 'colleague')
  if (network === undefined || gauge === null || !(isAtDesk || actor.gauges.includes(gauge.id))) {
    return refused(
      'GAUGE_NOT_YOURS',
      `the gauge "${asked}"`,
      'Open the page by the link that you got from your network.',
    )
  }
  const answer = observingDays(network.timeZone, network.readingTime)
  if (answer.kind === 'problem') return refused(answer.code, answer.seen, answer.advice)
  const nowUtc = (await demoNow(ledger, network, answer.days)) ?? clock.nowUtc()
  return answered({ network, gauge, days: answer.days, nowUtc })
}

/** Pages ask by the code as it is written; only one that was typed by hand is looked for among all. */
async function gaugeNamed(ledger: Ledger, networkId: string, asked: string): Promise<Gauge | null> {
  const exact = await ledger.gauge(networkId, asked)
  if (exact !== null) return exact
  const wanted = asked.toLowerCase()
  return (await ledger.gauges(networkId)).find(({ code }) => code.toLowerCase() === wanted) ?? null
}

/** The invented network of the demo lives on its one morning, whenever it is looked at; null for any other. */
async function demoNow(ledger: Ledger, network: NetworkSettings, days: ObservingDays): Promise<string | null> {
  if (network.id !== demoNetworkId) return null
  const range = await ledger.dayRange(network.id)
  return range === null
    ? null
    : formatInstant(days.endUtcMs(epochDayFromIso(range.lastDay)) + DEMO_MINUTES * MS_PER_MINUTE)
}
