/**
 * How many light amounts each gauge reports against the gauges around it on the same days. Many observers leave out
 * what is below 0.05 in [Daly2007]; on the same days neither season nor weather nor gaps make a difference.
 */
import type { DailyTable } from '../network/dailyTable.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'
import { nearestGauges } from '../space/nearestGauges.ts'

/** 0.05 in: below it an amount is light. */
export const lightBelowMm = 1.27
/** Upper ends of the classes of wet amounts, mm; the last is open. */
export const amountClassesMm = [0.3, 0.65, lightBelowMm, 2.6, 5.2, 10.5, Number.POSITIVE_INFINITY] as const
const neighbourCount = 12
const leastNeighbours = 3

export interface LightAmounts {
  /** Light amounts of each gauge, and how many the gauges around let expect. */
  own: Float64Array
  expected: Float64Array
  /** Daily readings that took part. */
  readings: Float64Array
  /** Wet amounts by class, own and expected; index gauge * classes + class. */
  byClass: Float64Array
  expectedByClass: Float64Array
}

export function lightAmounts(gauges: GaugeSet, table: DailyTable): LightAmounts {
  const n = gauges.ids.length
  const classes = amountClassesMm.length
  const near = nearestGauges(gauges, neighbourCount)
  const out: LightAmounts = {
    own: new Float64Array(n),
    expected: new Float64Array(n),
    readings: new Float64Array(n),
    byClass: new Float64Array(n * classes),
    expectedByClass: new Float64Array(n * classes),
  }
  const classOf = new Int8Array(n)
  const around = new Float64Array(classes)
  for (let row = 0; row < table.dayCount; row++) {
    const at = row * n
    for (let g = 0; g < n; g++) classOf[g] = amountClass(table, at + g)
    for (let g = 0; g < n; g++) {
      if (classOf[g] === none) continue
      around.fill(0)
      let reporting = 0
      for (const other of near[g]!) {
        const otherClass = classOf[other]!
        if (otherClass === none) continue
        reporting++
        if (otherClass >= 0) around[otherClass]! += 1
      }
      if (reporting < leastNeighbours) continue
      out.readings[g]! += 1
      if (classOf[g]! >= 0) out.byClass[g * classes + classOf[g]!]! += 1
      for (let k = 0; k < classes; k++) out.expectedByClass[g * classes + k]! += around[k]! / reporting
    }
  }
  for (let g = 0; g < n; g++) {
    for (let k = 0; amountClassesMm[k]! <= lightBelowMm; k++) {
      out.own[g]! += out.byClass[g * classes + k]!
      out.expected[g]! += out.expectedByClass[g * classes + k]!
    }
  }
  return out
}

/** No daily reading; dry or a trace. */
const none = -2
const dry = -1

function amountClass(table: DailyTable, i: number): number {
  if (table.spanDays[i] !== 1) return none
  const amountMm = table.amountMm[i]!
  if (!(amountMm > 0)) return dry
  let k = 0
  while (amountMm >= amountClassesMm[k]!) k++
  return k
}
