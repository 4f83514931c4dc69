/** Who has answered for a day, without judging what: quick, and there before the day's first reading has come. */
import type { RollRow } from '@gaugewright/contract'
import { type EpochDay, isoFromEpochDay } from '@gaugewright/science'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { buildRoll } from '../morning/buildRoll.ts'
import { windowDays } from '../morning/loadMorning.ts'

export async function rollOfDay(
  { ledger }: Pick<Ports, 'ledger'>,
  network: NetworkSettings,
  day: EpochDay,
): Promise<RollRow[]> {
  const fromDay = isoFromEpochDay(day - windowDays.before)
  const toDay = isoFromEpochDay(day + windowDays.after)
  const [gauges, readings, absences] = await Promise.all([
    ledger.gauges(network.id),
    ledger.readings(network.id, fromDay, toDay),
    ledger.absences(network.id, fromDay, toDay),
  ])
  return buildRoll({
    day: isoFromEpochDay(day),
    gauges,
    readings,
    accepted: [],
    decisions: new Map(),
    absences,
    odds: new Map(),
    lateAfterMs: Number.POSITIVE_INFINITY,
  })
}
