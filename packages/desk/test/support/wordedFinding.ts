/** Invented findings to word: one reading of a gauge by a mill, with any explanation of it. */
import {
  type Explanation,
  type ExplanationDetail,
  expectationLevels,
  type Finding,
  type Language,
  type Unit,
} from '@gaugewright/science'
import type { WordingAsk } from '../../src/app/wording/wordingAsk.ts'

export const DAY = 20_515 // 2026-03-03, a Tuesday
/** Quantiles that no figure of a message could hit by chance: 33.3 mm at the lowest, growing by 1.37 mm a level. */
export const quantilesMm = expectationLevels.map((_, index) => 33.3 + 1.37 * index)

export function findingOf(change: Partial<Finding> = {}): Finding {
  return {
    gauge: 3,
    day: DAY,
    reportedMm: 7.6,
    isTrace: false,
    spanDays: 1,
    canTell: true,
    standsOdds: 0.04,
    likeliestMistake: 'decimal',
    likeliestMistakeOdds: 0.8,
    proposedMm: 76,
    proposedFirstDay: DAY,
    proposedLastDay: DAY,
    expectation: { dryChance: 0.013, meanMm: 47.7, quantilesMm },
    neighbourCount: 9,
    ...change,
  }
}

/** Central 80 % as given, half the low and twice the high beyond it. */
export function expectationOf(lowMm: number, midMm: number, highMm: number, dryChance: number): Finding['expectation'] {
  const at = (level: number): number => {
    if (level < 0.1) return lowMm / 2
    if (level > 0.9) return 2 * highMm
    return level === 0.1 ? lowMm : level === 0.9 ? highMm : midMm
  }
  return { dryChance, meanMm: midMm, quantilesMm: expectationLevels.map(at) }
}

const details: Partial<Record<Explanation['kind'], ExplanationDetail>> = {
  decimal: { kind: 'decimal', places: -1 },
  unit: { kind: 'unit', measuredIn: 'in' },
  day: { kind: 'day', otherDay: DAY - 1, otherReportedMm: 0 },
  carried: { kind: 'carried', endsOn: DAY, totalMm: 7.6, dayCount: 3 },
  transposed: { kind: 'transposed', originalText: '6.7' },
  repeated: { kind: 'repeated', earlierDay: DAY - 1, earlierMm: 7.6 },
}
/** What each explanation implies of the 7.6 mm: its own arithmetic, or the middle of what was expected. */
const implied: Partial<Record<Explanation['kind'], number>> = {
  stands: 7.6,
  decimal: 76,
  unit: 193,
  day: 0,
  carried: 7.6,
  'first-fill-lost': 33,
  wetted: 0,
  transposed: 6.7,
}

export function explanationOf(kind: Explanation['kind'], odds: number, change: Partial<Explanation> = {}): Explanation {
  const impliedMm = implied[kind] ?? 48.37
  return {
    kind,
    odds,
    impliedMm,
    impliedP10Mm: 0.77 * impliedMm,
    impliedP90Mm: 1.21 * impliedMm,
    firstDay: kind === 'carried' ? DAY - 2 : DAY,
    lastDay: DAY,
    detail: details[kind] ?? null,
    ...change,
  }
}

/** The day before, and the three days that a total would hold. */
export const expectedSpans = [
  { firstDay: DAY - 1, lastDay: DAY - 1, lowMm: 5.23, midMm: 8.41, highMm: 12.8, dryChance: 0.021, silentDays: 0 },
  { firstDay: DAY - 2, lastDay: DAY, lowMm: 44.2, midMm: 57.7, highMm: 73.1, dryChance: 0.004, silentDays: 0 },
]

export function askOf(language: Language, unit: Unit, change: Partial<WordingAsk> = {}): WordingAsk {
  return {
    language,
    unit,
    gaugeName: 'Alder Mill',
    observerName: 'Ines Holt',
    typedText: unit === 'in' ? '0.30' : '7.6',
    typedUnit: unit,
    finding: findingOf(unit === 'in' ? { reportedMm: 7.62 } : {}),
    expectedSpans,
    isSnowSeason: false,
    ...change,
  }
}

/** Figures of a text as numbers, whatever the decimal mark, smallest first. */
export function figuresIn(text: string): number[] {
  return [...text.matchAll(/\d+(?:[.,]\d+)?/g)]
    .map(([figure]) => Number(figure.replace(',', '.')))
    .sort((a, b) => a - b)
}

export function sentencesIn(text: string): string[] {
  return text.split(/(?<=[.?!])\s+/)
}

export function wordsIn(sentence: string): number {
  return sentence.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length
}
