/**
 * The chance that a gauge is read as a given amount: the amount that fell is rounded to one of the steps that the gauge's
 * readings are usually taken to (climate/rounding.ts), and lies in the cell of that step around it.
 */
import { isOnStep, type Rounding } from '../climate/rounding.ts'

/** Steps of one gauge with their shares, the ones it hardly ever uses left out. */
export interface Reader {
  /** Last place that amounts are written to, mm. */
  writtenMm: number
  stepsMm: readonly number[]
  share: readonly number[]
}

const hardlyEver = 0.001
/** Share of amounts that are finer than the last place of the network. */
const finerShare = 0.0005

const kept = new WeakMap<Rounding, Reader[]>()

/** The reader of a gauge; worked out once for each learned rounding, which is not to be changed from here on. */
export function readerOf(rounding: Rounding, gauge: number): Reader {
  let readers = kept.get(rounding)
  if (readers === undefined) {
    readers = []
    kept.set(rounding, readers)
  }
  readers[gauge] ??= makeReader(rounding, gauge)
  return readers[gauge]!
}

function makeReader(rounding: Rounding, gauge: number): Reader {
  const { stepsMm, share, writtenMm } = rounding
  const own = share.subarray(gauge * stepsMm.length, (gauge + 1) * stepsMm.length)
  const used = stepsMm.map((_, s) => s).filter((s) => own[s]! >= hardlyEver)
  return { writtenMm, stepsMm: used.map((s) => stepsMm[s]!), share: used.map((s) => own[s]!) }
}

/**
 * Chance that the gauge was read as an amount that is known to ± toleranceMm only.
 * @param mass     chance that the true amount lies in (lowMm, highMm]
 * @param leastMm  amounts up to here are read as nothing
 */
export function readMass(
  mass: (lowMm: number, highMm: number) => number,
  by: Reader,
  mm: number,
  toleranceMm: number,
  leastMm: number,
): number {
  let sum = 0
  let known = -1
  let isWritten = false
  const half = by.writtenMm / 2
  for (let s = 0; s < by.stepsMm.length; s++) {
    const step = by.stepsMm[s]!
    if (step < 2 * toleranceMm) {
      isWritten = true
      // Several marks lie within what is known: one of them was read.
      if (known < 0) known = mass(Math.max(leastMm, mm - toleranceMm), mm + toleranceMm)
      sum += by.share[s]! * known
    } else if (isOnStep(mm, step, toleranceMm)) {
      isWritten = true
      const mark = Math.round(mm / step) * step
      if (mark + step / 2 > leastMm) sum += by.share[s]! * mass(Math.max(leastMm, mark - step / 2), mark + step / 2)
    }
  }
  // Finer than the network ever wrote: converted, perhaps. Seldom, but not never.
  if (!isWritten && mm > leastMm) sum = finerShare * mass(Math.max(leastMm, mm - half), mm + half)
  return sum
}
