/** The network's past as one dense table, from which the model learns climate and correlation. */
import { type DailyTable, type Decision, emptyDailyTable, epochDayFromIso, type IsoDay } from '@gaugewright/science'
import type { Ledger } from '../../ports/ledger.ts'
import { decisionsInForce } from '../morning/decisionsInForce.ts'

const UM_PER_MM = 1000
const MAX_SPAN_DAYS = 255
const ROWS_BETWEEN_PAUSES = 20_000

/**
 * @param indexOf  column of each gauge id
 * @returns table of firstDay…lastDay as accepted: amended amounts in place of reported ones, set-aside readings missing
 */
export async function historyTable(
  ledger: Ledger,
  networkId: string,
  indexOf: ReadonlyMap<string, number>,
  firstDay: IsoDay,
  lastDay: IsoDay,
  signal?: AbortSignal,
): Promise<DailyTable> {
  const first = epochDayFromIso(firstDay)
  const dayCount = epochDayFromIso(lastDay) - first + 1
  const table = emptyDailyTable(indexOf.size, first, dayCount)
  const inForce = decisionsInForce(await ledger.decisions(networkId, firstDay, lastDay))
  let rows = 0
  let day: IsoDay = firstDay
  let row = 0
  for await (const reading of ledger.readingAmounts(networkId, firstDay, lastDay)) {
    if (++rows % ROWS_BETWEEN_PAUSES === 0) {
      await new Promise((resume) => setImmediate(resume))
      signal?.throwIfAborted()
    }
    const taken = takenFrom(reading, inForce.get(reading.readingId))
    const column = indexOf.get(reading.gaugeId)
    if (taken === null || column === undefined) continue
    if (taken.lastDay !== day) {
      day = taken.lastDay
      row = epochDayFromIso(day) - first
    }
    if (row < 0 || row >= dayCount) continue
    const spanDays = taken.firstDay === taken.lastDay ? 1 : first + row - epochDayFromIso(taken.firstDay) + 1
    const cell = row * indexOf.size + column
    const before = table.spanDays[cell] ?? 0
    if (spanDays > MAX_SPAN_DAYS || (before !== 0 && before <= spanDays)) continue
    table.amountMm[cell] = taken.amountUm / UM_PER_MM
    table.isTrace[cell] = taken.isTrace ? 1 : 0
    table.spanDays[cell] = spanDays
  }
  return table
}

type Taken = { amountUm: number; isTrace: boolean; firstDay: IsoDay; lastDay: IsoDay }

function takenFrom(reading: Taken, decision: Decision | undefined): Taken | null {
  if (decision?.verdict === 'set aside') return null
  if (decision?.verdict === 'amended' && decision.amended !== null) return decision.amended
  return reading
}
