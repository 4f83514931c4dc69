// Contents, by chapter. Named exports only.
export { ScienceError, type ScienceErrorCode } from './error.ts'
export {
  type DayAround,
  type Evidence,
  type Expectation,
  type Explanation,
  type ExplanationDetail,
  expectationLevels,
  type Finding,
  type NeighbourEvidence,
} from './mistakes/finding.ts'
// Mistakes and findings
export { type ExplanationKind, type Mistake, mistakes } from './mistakes/mistake.ts'
export { type DailyTable, emptyDailyTable } from './network/dailyTable.ts'
// Networks
export type { GaugeSet } from './network/gaugeSet.ts'
// Readings
export {
  dateFromEpochDay,
  daysInMonth,
  type EpochDay,
  epochDayFromDate,
  epochDayFromIso,
  isoFromEpochDay,
  parseIsoDay,
} from './reading/epochDay.ts'
export type { Amount, Decision, Door, IsoDay, Reading, ReadingKind, Unit, Verdict } from './reading/reading.ts'
