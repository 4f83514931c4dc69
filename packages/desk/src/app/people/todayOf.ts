import { epochDayFromIso, type IsoDay, isoFromEpochDay, observingDays } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'

const MS_PER_MINUTE = 60_000

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
export function runningDayOf(network: NetworkSettings, { clock }: Pick<Ports, 'clock'>): IsoDay {
  return dayAt(network, Date.parse(clock.nowUtc()))
}

/** The newest observing day for which a reading would be late by now: before that, nobody has been silent on it. */
export function closedDayOf(network: NetworkSettings, { clock }: Pick<Ports, 'clock'>): IsoDay {
  const open = dayAt(network, Date.parse(clock.nowUtc()) - network.acceptWindowMin * MS_PER_MINUTE)
  return isoFromEpochDay(epochDayFromIso(open) - 1)
}

function dayAt(network: NetworkSettings, atMs: number): IsoDay {
  const days = observingDays(network.timeZone, network.readingTime)
  if (days.kind === 'problem') return new Date(atMs).toISOString().slice(0, 10)
  return isoFromEpochDay(days.days.dayOf(atMs))
}
