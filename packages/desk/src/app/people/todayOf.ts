import { type IsoDay, isoFromEpochDay, observingDays } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'

/** The date on the network's own calendar; that of UTC where its zone cannot be read. */
export function todayOf({ timeZone }: Pick<NetworkSettings, 'timeZone'>, { clock }: Pick<Ports, 'clock'>): IsoDay {
  const midnights = observingDays(timeZone, '00:00')
  const nowUtc = clock.nowUtc()
  // A date begins at its midnight, which still ends the date before: one millisecond later it is in.
  return midnights.kind === 'problem'
    ? nowUtc.slice(0, 10)
    : isoFromEpochDay(midnights.days.dayOf(Date.parse(nowUtc) + 1) - 1)
}

/** The observing day that is running: it ends at the next reading hour, and its reading is still to come. */
export function runningDayOf(network: NetworkSettings, ports: Pick<Ports, 'clock'>): IsoDay {
  const days = observingDays(network.timeZone, network.readingTime)
  if (days.kind === 'problem') return todayOf(network, ports)
  return isoFromEpochDay(days.days.dayOf(Date.parse(ports.clock.nowUtc())))
}
