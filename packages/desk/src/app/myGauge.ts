/** All that an observer's page needs to work, with a signal or without: the network's ways, the own gauge, its last weeks. */
import type { Actor, MyGauge } from '@gaugewright/contract'
import { isoFromEpochDay } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { demoNetworkId } from './demoNetworkId.ts'
import { ownGauge } from './my/ownGauge.ts'
import { pocketOf, wireOwnClimate } from './my/pocketOf.ts'
import { standingAbsences } from './my/standingAbsences.ts'
import { wireMyReading } from './my/wireMyReading.ts'
import { dueOf } from './sites/dueOf.ts'
import { siteBehind } from './sites/siteBehind.ts'

const SHOWN_DAYS = 62

export async function myGauge(
  ports: Pick<Ports, 'ledger' | 'access' | 'absences' | 'journal' | 'clock'>,
  ask: { actor: Actor; gauge: string },
): Promise<Answer<MyGauge>> {
  const { ledger } = ports
  const found = await ownGauge(ports, ask.actor, ask.gauge)
  if (!found.ok) return found
  const { network, gauge, days, nowUtc } = found.value
  const today = days.dayOf(Date.parse(nowUtc))
  const from = isoFromEpochDay(today - SHOWN_DAYS)
  const [readings, absences, climate] = await Promise.all([
    ledger.readingsOfGauge(network.id, gauge.id, from, isoFromEpochDay(today + 1)),
    standingAbsences(ports, found.value),
    pocketOf(ledger, network.id, gauge.id),
  ])
  const site = await siteBehind(ports, network.id, `gauge ${gauge.id}`)
  const surveys = site.ok ? await ports.journal.about(network.id, site.value.abouts) : []
  const { name, unit, timeZone, readingTime, acceptWindowMin, language } = network
  return answered({
    network: { name, unit, timeZone, readingTime, acceptWindowMin, language },
    gauge: {
      code: gauge.code,
      name: gauge.name,
      observerName: gauge.observerName,
      resolutionUm: gauge.resolutionUm,
    },
    readings: readings.map(wireMyReading).reverse(),
    absences,
    climate: climate === null ? null : wireOwnClimate(climate),
    siteDue: dueOf(surveys, isoFromEpochDay(today)).due,
    nowUtc,
    standsStill: network.id === demoNetworkId,
  })
}
