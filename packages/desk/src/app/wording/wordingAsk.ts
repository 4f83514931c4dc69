/** What a sentence or a message needs to know of one reading. */
import { type Explanation, expectationLevels, type Finding, type Language, type Unit } from '@gaugewright/science'
import type { ExpectedRange } from './expected.ts'
import type { ExpectedSpan } from './expectedSpans.ts'

export interface WordingAsk {
  language: Language
  /** The network's unit: every amount that the coordinator is told is said in it. */
  unit: Unit
  gaugeName: string
  observerName: string | null
  /** As typed, and the unit it was typed in; the observer is asked in it. */
  typedText: string
  typedUnit: Unit
  finding: Finding
  /** What was expected over the other days that explanations name. */
  expectedSpans: readonly ExpectedSpan[]
  /** Whether melting snow may be named for the gauge at that time of the year. */
  isSnowSeason: boolean
}

/** What is said of one explanation: a sentence or two for the coordinator, a question for the observer. */
export interface Words {
  /** Holds what was expected here. Never sent to the observer. */
  sentence: string
  /** Built from what the observer typed alone: no neighbour's amount, nothing expected from them, no blame. */
  question: string
}

/** Central 80 %, central 98 % and middle of what was expected (mm), and the chance of a dry day. */
export function rangeOf({
  expectation,
}: Pick<Finding, 'expectation'>): ExpectedRange & { leastMm: number; mostMm: number } {
  const at = (level: number): number =>
    expectation.quantilesMm[expectationLevels.indexOf(level as (typeof expectationLevels)[number])] ?? 0
  return {
    leastMm: at(0.01),
    lowMm: at(0.1),
    midMm: at(0.5),
    highMm: at(0.9),
    mostMm: at(0.99),
    dryChance: expectation.dryChance,
  }
}

/** The explanation `stands`, for a finding whose list of explanations does not hold it. */
export function standsExplanation(finding: Finding): Explanation {
  return {
    kind: 'stands',
    odds: finding.standsOdds,
    impliedMm: finding.reportedMm,
    impliedP10Mm: finding.reportedMm,
    impliedP90Mm: finding.reportedMm,
    firstDay: finding.day - finding.spanDays + 1,
    lastDay: finding.day,
    detail: null,
  }
}
