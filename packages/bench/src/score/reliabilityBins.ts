/** Do odds mean what they say? What was said, by bins, beside how often it happened. */
import { wilsonInterval } from './wilsonInterval.ts'

export interface ReliabilityBin {
  from: number
  below: number
  count: number
  /** Mean of the odds said in the bin; NaN where it is empty, as all that follows. */
  meanSaid: number
  /** Share of the cases in which it happened, and its 95 % interval. */
  share: number
  low: number
  high: number
}

export interface SaidAndHappened {
  /** Odds from 0 to 1. */
  said: ArrayLike<number>
  /** 1 where it happened, 0 where not. */
  happened: ArrayLike<number>
  /** Cases of one day lean on the same weather and count less than as many independent ones. */
  day: ArrayLike<number>
}

/** Finer toward both ends, where most odds lie. */
export const reliabilityEdges: readonly number[] = [
  0, 0.02, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99, 0.995, 1,
]

/**
 * @param edges  ascending, from 0 to 1; a bin takes its lower edge, the last one takes 1 as well
 * @remarks The interval is Wilson's for the effective number of cases: share × (1 - share) over the variance of the
 * share with whole days drawn at random, at most the number of cases [KornGraubard1998].
 */
export function reliabilityBins(cases: SaidAndHappened, edges: readonly number[] = reliabilityEdges): ReliabilityBin[] {
  const binCount = edges.length - 1
  const counts = new Float64Array(binCount)
  const saidSums = new Float64Array(binCount)
  const happenedSums = new Float64Array(binCount)
  const days = Array.from({ length: binCount }, () => new Map<number, { count: number; happened: number }>())
  for (let i = 0; i < cases.said.length; i++) {
    const said = cases.said[i]!
    let bin = 0
    while (bin < binCount - 1 && said >= edges[bin + 1]!) bin++
    const happened = cases.happened[i]!
    counts[bin]! += 1
    saidSums[bin]! += said
    happenedSums[bin]! += happened
    const day = days[bin]!.get(cases.day[i]!)
    if (day === undefined) days[bin]!.set(cases.day[i]!, { count: 1, happened })
    else {
      day.count++
      day.happened += happened
    }
  }
  return Array.from(counts, (count, bin) => {
    const share = happenedSums[bin]! / count
    const effective = effectiveCount(days[bin]!.values(), count, share)
    return {
      from: edges[bin]!,
      below: edges[bin + 1]!,
      count,
      meanSaid: saidSums[bin]! / count,
      share,
      ...wilsonInterval(share * effective, effective),
    }
  })
}

/** How many independent cases would know the share as well as these do, in days that hold together. */
function effectiveCount(days: Iterable<{ count: number; happened: number }>, count: number, share: number): number {
  let squares = 0
  for (const day of days) squares += (day.happened - day.count * share) ** 2
  // Squares of days over the squared count is the variance of the share; all of one kind leaves nothing to tell it from.
  return squares > 0 ? Math.min(count, (share * (1 - share) * count * count) / squares) : count
}
