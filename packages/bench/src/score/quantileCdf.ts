/** The distribution function of an amount that is known by its chance of dry and evenly spaced quantiles. */

export interface QuantileForecast {
  /** Quantile k (mm) at `start + k`, level (k + 0.5) / levelCount; ascending, 0 up to the chance of dry. */
  quantilesMm: Float32Array | Float64Array
  start: number
  levelCount: number
  dryChance: number
}

/** Where a reading lies in its forecast: the share below its rounding cell, and the share up to the cell's end. */
export interface ForecastCell {
  low: number
  high: number
}

/**
 * @param observedMm  0 for a dry reading, whose cell is all of the chance of dry
 * @param stepMm      step in which amounts are written; the cell reaches half a step to either side
 * @returns straight lines between the quantiles; beyond the last one the cell takes all that is left
 */
export function forecastCell(forecast: QuantileForecast, observedMm: number, stepMm: number): ForecastCell {
  const halfMm = stepMm / 2
  if (observedMm <= 0) return { low: 0, high: forecast.dryChance }
  const low = shareUpTo(forecast, observedMm - halfMm, halfMm, false)
  return { low, high: Math.max(low, shareUpTo(forecast, observedMm + halfMm, halfMm, true)) }
}

/** Share at or below an amount; up to half a step it is the chance of dry. */
function shareUpTo(forecast: QuantileForecast, amountMm: number, halfMm: number, isEndOfCell: boolean): number {
  const { quantilesMm, start, levelCount, dryChance } = forecast
  let below = 0
  let above = levelCount
  while (below < above) {
    const middle = (below + above) >> 1
    if (quantilesMm[start + middle]! <= amountMm) below = middle + 1
    else above = middle
  }
  if (below === levelCount) return isEndOfCell ? 1 : Math.max(dryChance, (levelCount - 0.5) / levelCount)
  const levelAbove = Math.max(dryChance, (below + 0.5) / levelCount)
  const mmAbove = quantilesMm[start + below]!
  // Quantiles at or below half a step are dry days and tell no more than the chance of dry does.
  const isFirstWet = below === 0 || quantilesMm[start + below - 1]! <= halfMm
  const levelBelow = isFirstWet ? dryChance : Math.max(dryChance, (below - 0.5) / levelCount)
  const mmBelow = isFirstWet ? halfMm : quantilesMm[start + below - 1]!
  if (amountMm <= mmBelow || mmAbove <= mmBelow) return levelBelow
  return levelBelow + ((levelAbove - levelBelow) * (amountMm - mmBelow)) / (mmAbove - mmBelow)
}
