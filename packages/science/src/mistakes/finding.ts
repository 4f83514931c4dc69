/**
 * A finding: what a gauge should have caught, the odds of each way its report may have gone wrong, and what is proposed
 * instead. Amounts in mm, days as whole days since 1970-01-01 (epoch days), odds from 0 to 1.
 */
import type { ExplanationKind, Mistake } from './mistake.ts'

/** Predictive distribution of a gauge's true amount for one observing day, from all other gauges and its own climate. */
export interface Expectation {
  dryChance: number
  meanMm: number
  /** Quantiles at `expectationLevels`, non-decreasing, 0 where the level lies below the chance of dry. */
  quantilesMm: readonly number[]
}

/** Levels of `Expectation.quantilesMm`. */
export const expectationLevels = [
  0.01, 0.025, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95,
  0.975, 0.99,
] as const

/** One explanation of a report. The odds of all explanations of a reading sum to 1. */
export interface Explanation {
  kind: ExplanationKind
  odds: number
  /** What the gauge caught over firstDay…lastDay if this explanation is right: median and central 80 %. */
  impliedMm: number
  impliedP10Mm: number
  impliedP90Mm: number
  firstDay: number
  lastDay: number
  detail: ExplanationDetail | null
}

export type ExplanationDetail =
  /** Reported = true × 10^places, but for rounding. */
  | { kind: 'decimal'; places: -2 | -1 | 1 | 2 }
  /** The unit the amount was measured in, typed into a field of the other. */
  | { kind: 'unit'; measuredIn: 'mm' | 'in' }
  /** The day that the reported amount belongs to (`other`), and what was reported there (mm, null where nothing was). */
  | { kind: 'day'; otherDay: number; otherReportedMm: number | null }
  /** A total over days that were reported as zero or not at all; `endsOn` is the day that carries the total. */
  | { kind: 'carried'; endsOn: number; totalMm: number; dayCount: number }
  | { kind: 'transposed'; originalText: string }
  | { kind: 'repeated'; earlierDay: number; earlierMm: number }

export interface NeighbourEvidence {
  gauge: number
  distanceM: number
  /** Its day (epoch day): the same, or the one before or after where the two gauges date their days differently. */
  day: number
  /** Reported that day (mm); NaN when it takes part only through a multi-day total. */
  amountMm: number
  isTrace: boolean
  /** Share of this neighbour in the estimate (0 to 1, all neighbours of a finding sum to 1). */
  weight: number
  /** How far its own reading is believed (its odds of standing). */
  believed: number
}

/** One day around the day judged, at the same gauge: for seeing day slips, carried totals and repeats. */
export interface DayAround {
  day: number
  reportedMm: number | null
  expectedP10Mm: number
  expectedP50Mm: number
  expectedP90Mm: number
}

export interface Finding {
  gauge: number
  day: number
  reportedMm: number
  isTrace: boolean
  /** Days covered by the report: 1, or more for a declared multi-day total. */
  spanDays: number
  /** False where no neighbour can be used: then the odds rest on the gauge's climate alone, which can hardly tell. */
  canTell: boolean
  standsOdds: number
  /** The likeliest mistake, even where the reading probably stands. */
  likeliestMistake: Mistake
  likeliestMistakeOdds: number
  proposedMm: number
  proposedFirstDay: number
  proposedLastDay: number
  expectation: Expectation
  neighbourCount: number
}

/** All that a screen or a letter needs to word one finding. */
export interface Evidence {
  finding: Finding
  explanations: readonly Explanation[]
  neighbours: readonly NeighbourEvidence[]
  daysAround: readonly DayAround[]
  /** Chance, if the reading stood, of something at least as far out in its direction (0 to 1). */
  tailChance: number
  tail: 'low' | 'high' | 'middle'
}
