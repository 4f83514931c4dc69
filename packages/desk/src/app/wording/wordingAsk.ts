/** What a sentence or a message needs to know of one reading. */
import { type Explanation, expectationLevels, type Finding, type Language, type Unit } from '@gaugewright/science'

export interface WordingAsk {
  language: Language
  /** The network's unit: every amount is said in it. */
  unit: Unit
  gaugeName: string
  observerName: string | null
  /** As typed, and the unit it was typed in. */
  typedText: string
  typedUnit: Unit
  finding: Finding
}

/** What is said of one explanation: a sentence for the coordinator, a question for the observer. */
export interface Words {
  /** May hold what was expected here. Never sent to the observer. */
  sentence: string
  /** Built from what the observer typed alone: no neighbour's amount, nothing expected from them, no blame. */
  question: string
}

/** Central 80 % and middle of what was expected, mm. */
export function expectedRange(finding: Finding): { lowMm: number; midMm: number; highMm: number } {
  const at = (level: number): number =>
    finding.expectation.quantilesMm[expectationLevels.indexOf(level as (typeof expectationLevels)[number])] ?? 0
  return { lowMm: at(0.1), midMm: at(0.5), highMm: at(0.9) }
}

/** Within the central 80 % of what was expected, to half the last digit that is shown. */
export function isUsual(finding: Finding): boolean {
  const { lowMm, highMm } = expectedRange(finding)
  const HALF_DIGIT_MM = 0.05
  return finding.reportedMm >= lowMm - HALF_DIGIT_MM && finding.reportedMm <= highMm + HALF_DIGIT_MM
}

/** More than the central 80 % of what was expected. */
export function isAbove(finding: Finding): boolean {
  return !isUsual(finding) && finding.reportedMm > expectedRange(finding).highMm
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
