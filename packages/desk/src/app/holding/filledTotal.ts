/**
 * A gauge's total with its gaps filled in proportion to the others: the normal ratio method, after [Paulhus1952], with the
 * mean of all gauges as the index and the ratio taken over the days that the gauge answered.
 */
export interface OwnRecord {
  totalMm: number
  /** For each day of the period: whether an amount of the gauge covers it. */
  isCovered: readonly boolean[]
}

/** Below this share of days the gaps would say more than the gauge. */
export const LEAST_COVERED_SHARE = 0.9

/**
 * @param meanMm  of all gauges for the same days; NaN where none was read
 * @returns mm; null where too little is covered, or rain fell on others alone while the gauge was read
 */
export function filledTotal({ totalMm, isCovered }: OwnRecord, meanMm: readonly number[]): number | null {
  let [all, seen, days] = [0, 0, 0]
  for (const [at, covered] of isCovered.entries()) {
    const mean = Number.isNaN(meanMm[at] ?? Number.NaN) ? 0 : meanMm[at]!
    all += mean
    if (!covered) continue
    seen += mean
    days++
  }
  if (isCovered.length === 0 || days < LEAST_COVERED_SHARE * isCovered.length) return null
  if (seen === 0) return totalMm === 0 && all > 0 ? null : totalMm
  return (totalMm * all) / seen
}
