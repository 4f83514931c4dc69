/** One day's amounts as the field takes them: single days as accepted; totals over several days and silence are missing. */
import type { DailyTable, DayAmounts } from '@gaugewright/science'
import type { Gauge } from '../../ports/ledger.ts'

const USUAL_RESOLUTION_UM = 100

/** @param gauges  in the order of the table's columns */
export function dayAmounts(table: DailyTable, epochDay: number, gauges: readonly Gauge[]): DayAmounts {
  const { gaugeCount } = table
  const row = epochDay - table.firstDay
  const amountMm = new Float64Array(gaugeCount).fill(Number.NaN)
  const isTrace = new Uint8Array(gaugeCount)
  if (row >= 0 && row < table.dayCount) {
    for (let gauge = 0; gauge < gaugeCount; gauge++) {
      const cell = row * gaugeCount + gauge
      if (table.spanDays[cell] !== 1) continue
      amountMm[gauge] = table.amountMm[cell] ?? Number.NaN
      isTrace[gauge] = table.isTrace[cell] ?? 0
    }
  }
  const resolutionMm = Float64Array.from(gauges, (gauge) => (gauge.resolutionUm ?? USUAL_RESOLUTION_UM) / 1000)
  return { amountMm, isTrace, resolutionMm }
}

/** What is to be changed at one gauge: another amount for the day, or none. */
export interface AmountChange {
  gauge: number
  /** NaN leaves the gauge out. */
  amountMm: number
  isTrace: boolean
}

export function withChanges(day: DayAmounts, changes: readonly AmountChange[]): DayAmounts {
  const amountMm = day.amountMm.slice()
  const isTrace = day.isTrace?.slice() ?? new Uint8Array(amountMm.length)
  for (const change of changes) {
    amountMm[change.gauge] = change.amountMm
    isTrace[change.gauge] = change.isTrace ? 1 : 0
  }
  return { ...day, amountMm, isTrace }
}
