/** The absences of one gauge that stand and have not passed, as its own page lists them. */
import type { WireAbsence } from '@gaugewright/contract'
import { isoFromEpochDay } from '@gaugewright/science'
import type { Ports } from '../../ports/ports.ts'
import type { OwnGauge } from './ownGauge.ts'

/** An absence may begin this far ahead, and last a year. */
const AHEAD_DAYS = 732

export async function standingAbsences(
  { absences }: Pick<Ports, 'absences'>,
  { network, gauge, days, nowUtc }: OwnGauge,
): Promise<WireAbsence[]> {
  const today = days.dayOf(Date.parse(nowUtc))
  const ahead = await absences.ofDays(network.id, isoFromEpochDay(today), isoFromEpochDay(today + AHEAD_DAYS))
  return ahead
    .filter(({ gaugeId }) => gaugeId === gauge.id)
    .map(({ id, firstDay, lastDay }) => ({ id, firstDay, lastDay }))
}
