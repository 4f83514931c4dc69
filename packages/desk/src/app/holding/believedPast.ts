/** The past without the readings that still wait for a decision: nothing that the review doubts goes out as a fact. */
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { Ports } from '../../ports/ports.ts'
import { doubtfulReadings } from './doubtfulReadings.ts'
import type { Past } from './pastOf.ts'

/**
 * @param first  epoch days that are looked at, both included
 * @returns the same past, its table a copy in which those readings are missing
 */
export async function believedPast(
  ports: Pick<Ports, 'ledger'>,
  network: NetworkSettings,
  past: Past,
  first: number,
  last: number,
): Promise<Past> {
  const doubtful = await doubtfulReadings(ports, network, past, first, last)
  const { gaugeCount } = past.table
  const columnOf = new Map(past.gauges.map(({ id }, column) => [id, column]))
  const spanDays = past.table.spanDays.slice()
  const amountMm = past.table.amountMm.slice()
  for (const { gaugeId, day } of doubtful) {
    const cell = (day - past.firstDay) * gaugeCount + columnOf.get(gaugeId)!
    spanDays[cell] = 0
    amountMm[cell] = Number.NaN
  }
  return { ...past, table: { ...past.table, spanDays, amountMm } }
}
