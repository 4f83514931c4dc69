import { type IsoDay, isoFromEpochDay, observingDays } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'

/** The observing day that is running, by the network's zone and hour; the date in UTC where its zone cannot be read. */
export function todayOf({ timeZone, readingTime }: NetworkSettings, { clock }: Pick<Ports, 'clock'>): IsoDay {
  const days = observingDays(timeZone, readingTime)
  const nowUtc = clock.nowUtc()
  return days.kind === 'problem' ? nowUtc.slice(0, 10) : isoFromEpochDay(days.days.dayOf(Date.parse(nowUtc)))
}
