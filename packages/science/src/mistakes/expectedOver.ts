/** What was expected of a gauge over days other than its reading's: of the other day of a slip, over the days of a total. */
import { amountQuantile, dryChance, predictiveAt } from '../expectation/predictive.ts'
import type { Judgement } from './judgement.ts'

export interface ExpectedOver {
  /** Chance that nothing the gauge resolves fell on any of the days. */
  dryChance: number
  /** Median and central 80 % of the sum, mm. */
  lowMm: number
  midMm: number
  highMm: number
  /** Days without a report of their own. */
  silentDays: number
}

/** Even levels (k + 0.5) / 25; the levels 0.1, 0.5 and 0.9 are among them. */
const levelCount = 25
const levels = Array.from({ length: levelCount }, (_, k) => (k + 0.5) / levelCount)
const [P10, P50, P90] = [2, 12, 22] as const

/**
 * The days are taken as independent given the other gauges, as in the likelihood of a carried total.
 * @param firstDay  epoch day, as lastDay, both included; days that the judgement does not hold are left out
 */
export function expectedOver(judgement: Judgement, gauge: number, firstDay: number, lastDay: number): ExpectedOver {
  const { latent } = judgement
  const { table } = latent
  const from = Math.max(0, firstDay - table.firstDay)
  const to = Math.min(table.dayCount - 1, lastDay - table.firstDay)
  let sumMm = new Float64Array(levelCount)
  let dry = 1
  let silentDays = 0
  for (let row = from; row <= to; row++) {
    const p = predictiveAt(latent, row, gauge)
    dry *= dryChance(p)
    sumMm = addQuantiles(
      sumMm,
      levels.map((level) => amountQuantile(p, level)),
    )
    if (table.spanDays[row * table.gaugeCount + gauge] === 0) silentDays++
  }
  return { dryChance: dry, lowMm: sumMm[P10]!, midMm: sumMm[P50]!, highMm: sumMm[P90]!, silentDays }
}

/**
 * Quantiles of the sum of two independent amounts at the same even levels: the middle of each even share of all pairs.
 * Adding a day that is surely dry changes nothing, and no day makes any quantile smaller.
 */
export function addQuantiles(a: ArrayLike<number>, b: ArrayLike<number>): Float64Array<ArrayBuffer> {
  const pairs = new Float64Array(a.length * b.length)
  for (let i = 0; i < a.length; i++) for (let j = 0; j < b.length; j++) pairs[i * b.length + j] = a[i]! + b[j]!
  pairs.sort()
  return Float64Array.from({ length: a.length }, (_, k) => pairs[k * b.length + (b.length - 1) / 2]!)
}
