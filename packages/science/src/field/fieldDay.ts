/** What the field is made from and what it gives: one day's amounts at gauges, places asked about, and the answers. */
import { ScienceError } from '../error.ts'
import type { GaugeSet } from '../network/gaugeSet.ts'

/** One day's accepted amounts, in the order of a GaugeSet. */
export interface DayAmounts {
  /** mm; NaN where there is no reading (never 0 for silence). */
  amountMm: Float64Array
  /** 1 where the reading is a trace. */
  isTrace?: Uint8Array
  /** Smallest step of a gauge, mm: one for all or one each; 0.1 when not given. Half of it and less is dry. */
  resolutionMm?: number | Float64Array
  /** What is usual at each gauge relative to the network (a factor from its climate); 1 when not given. */
  usual?: Float64Array
}

/** Places at which the field is wanted. */
export interface FieldTargets {
  xM: Float64Array
  yM: Float64Array
  /** What is usual at each place, as in DayAmounts; 1 when not given. */
  usual?: Float64Array
}

/**
 * What a gauge at each place would have caught, Float64Array(m) each. NaN throughout where no gauge of the day has a
 * reading: not knowing is not dry.
 */
export interface FieldValues {
  meanMm: Float64Array
  p10Mm: Float64Array
  p50Mm: Float64Array
  p90Mm: Float64Array
  /** Chance of catching nothing that can be measured, 0 to 1. */
  dryChance: Float64Array
}

const usualResolutionMm = 0.1

export function resolutionAt(day: DayAmounts, g: number): number {
  const resolution = day.resolutionMm ?? usualResolutionMm
  return typeof resolution === 'number' ? resolution : resolution[g]!
}

/** A reading that says: nothing to be measured. */
export function isDry(day: DayAmounts, g: number): boolean {
  return day.isTrace?.[g] !== 1 && day.amountMm[g]! <= 0.5 * resolutionAt(day, g)
}

/** @throws {ScienceError} SHAPES_DIFFER */
export function checkDay(gauges: GaugeSet, day: DayAmounts): void {
  const n = gauges.xM.length
  const lengths = [gauges.yM.length, day.amountMm.length, day.isTrace?.length ?? n, day.usual?.length ?? n]
  if (lengths.some((length) => length !== n))
    throw new ScienceError(
      'SHAPES_DIFFER',
      `field of ${n} gauges got y, amounts, traces, usual of ${lengths.join(', ')}`,
    )
}

/** Step of the finest gauge: what counts as dry where there is no gauge. */
export function finestStepMm(day: DayAmounts): number {
  if (day.resolutionMm === undefined || typeof day.resolutionMm === 'number')
    return day.resolutionMm ?? usualResolutionMm
  return day.resolutionMm.reduce((least, step) => Math.min(least, step), Number.POSITIVE_INFINITY)
}
