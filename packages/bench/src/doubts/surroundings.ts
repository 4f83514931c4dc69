/** What lies around one doubted reading: the gauge's own days beside it, and what the nearest gauges had. */
import type { DailyTable } from '@gaugewright/science'
import type { NearestGauges } from '../baselines/nearestGauges.ts'

/** How many of the nearest gauges that reported on the day are looked at. */
const lookedAt = 8
/** Days before the reading over which a total may have been gathered. */
export const daysBack = 10

/** Amounts of the nearest gauges on one day; NaN where none reported. */
export interface AroundOnDay {
  leastMm: number
  medianMm: number
  mostMm: number
  /** How many of them had nothing. */
  dryCount: number
}

export interface Surroundings {
  reportedMm: number
  /** The gauge's own amounts as reported, on the days before and after; NaN where silent. */
  beforeMm: number
  afterMm: number
  /** Zeros or silence that ran up to the day before, in days (at most `daysBack`). */
  emptyDaysBefore: number
  /** Zeros that run through the day of a zero, in days to both sides (at most `daysBack` each); 0 for an amount. */
  zerosInARow: number
  /** What the nearest gauges had in the middle over those zeros, or over the empty days before and the day itself. */
  aroundOverRunMm: number
  /** On how many of those days it was 1 mm or more. */
  wetDaysOverRun: number
  aroundBefore: AroundOnDay
  around: AroundOnDay
  aroundAfter: AroundOnDay
  nearestKm: number
}

export interface SurroundingsAsk {
  gauge: number
  day: number
  /** As judged: the gauge's own days. */
  judged: DailyTable
  /** Without mistakes put in: what the neighbours had. */
  clean: DailyTable
  nearest: NearestGauges
}

export function surroundingsOf({ gauge, day, judged, clean, nearest }: SurroundingsAsk): Surroundings {
  const own = (offset: number): number => amountAt(judged, gauge, day + offset)
  const n = judged.gaugeCount
  const places = Array.from({ length: n - 1 }, (_, place) => gauge * (n - 1) + place)
    .filter((place) => !Number.isNaN(amountAt(clean, nearest.order[place]!, day)))
    .slice(0, lookedAt)
  const neighbours = places.map((place) => nearest.order[place]!)
  const around = (offset: number): AroundOnDay => rangeOf(neighbours.map((g) => amountAt(clean, g, day + offset)))

  const reportedMm = own(0)
  let emptyDaysBefore = 0
  while (emptyDaysBefore < daysBack && !(own(-emptyDaysBefore - 1) > 0)) emptyDaysBefore++
  const isZero = reportedMm === 0
  const zerosBefore = isZero ? runOf((offset) => own(-offset) === 0) : 0
  const zerosAfter = isZero ? runOf((offset) => own(offset) === 0) : 0
  let aroundOverRunMm = 0
  let wetDaysOverRun = 0
  for (let offset = isZero ? -zerosBefore : -emptyDaysBefore; offset <= zerosAfter; offset++) {
    const { medianMm } = around(offset)
    if (Number.isNaN(medianMm)) continue
    aroundOverRunMm += medianMm
    if (medianMm >= 1) wetDaysOverRun++
  }
  return {
    reportedMm,
    beforeMm: own(-1),
    afterMm: own(1),
    emptyDaysBefore,
    zerosInARow: isZero ? zerosBefore + 1 + zerosAfter : 0,
    aroundOverRunMm,
    wetDaysOverRun,
    aroundBefore: around(-1),
    around: around(0),
    aroundAfter: around(1),
    nearestKm: places.length === 0 ? Number.NaN : nearest.distanceM[places[0]!]! / 1000,
  }
}

function runOf(holds: (offset: number) => boolean): number {
  let length = 0
  while (length < daysBack && holds(length + 1)) length++
  return length
}

function amountAt(table: DailyTable, gauge: number, day: number): number {
  const row = day - table.firstDay
  return row < 0 || row >= table.dayCount ? Number.NaN : table.amountMm[row * table.gaugeCount + gauge]!
}

function rangeOf(amountsMm: readonly number[]): AroundOnDay {
  const up = amountsMm.filter((amountMm) => !Number.isNaN(amountMm)).sort((a, b) => a - b)
  if (up.length === 0) return { leastMm: Number.NaN, medianMm: Number.NaN, mostMm: Number.NaN, dryCount: 0 }
  const medianMm = (up[(up.length - 1) >> 1]! + up[up.length >> 1]!) / 2
  return { leastMm: up[0]!, medianMm, mostMm: up.at(-1)!, dryCount: up.filter((amountMm) => amountMm === 0).length }
}
