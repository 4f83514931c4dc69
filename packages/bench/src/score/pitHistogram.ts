/** Histogram of probability integral transforms, with what chance alone would do to a calibrated forecast. */
import { z95 } from './wilsonInterval.ts'

export interface PitHistogram {
  count: number
  bins: {
    /** Share of the values in the bin; 1 / bins when calibrated. */
    share: number
    /** Half width of the 95 % range of the share if all values were independent and uniform (binomial). */
    independentHalf: number
    /** The same if only days were independent: the values of one day rise and fall together. */
    byDayHalf: number
  }[]
}

/**
 * @param pit  values 0 to 1, already randomised within cells and the chance of dry: uniform where the forecast is
 *             calibrated [Dawid1984], [Czado2009]
 * @param day  of each value
 */
export function pitHistogram(pit: ArrayLike<number>, day: ArrayLike<number>, binCount = 20): PitHistogram {
  const counts = new Float64Array(binCount)
  const byDay = new Map<number, Float64Array>()
  for (let i = 0; i < pit.length; i++) {
    const bin = Math.min(binCount - 1, Math.floor(pit[i]! * binCount))
    counts[bin]! += 1
    let ofDay = byDay.get(day[i]!)
    if (ofDay === undefined) {
      ofDay = new Float64Array(binCount)
      byDay.set(day[i]!, ofDay)
    }
    ofDay[bin]! += 1
  }
  const even = 1 / binCount
  const squares = new Float64Array(binCount)
  for (const ofDay of byDay.values()) {
    const expected = ofDay.reduce((sum, count) => sum + count, 0) * even
    for (let bin = 0; bin < binCount; bin++) squares[bin]! += (ofDay[bin]! - expected) ** 2
  }
  const count = pit.length
  const independentHalf = z95 * Math.sqrt((even * (1 - even)) / count)
  return {
    count,
    bins: Array.from(counts, (inBin, bin) => ({
      share: inBin / count,
      independentHalf,
      byDayHalf: (z95 * Math.sqrt(squares[bin]!)) / count,
    })),
  }
}
