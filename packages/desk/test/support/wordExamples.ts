/** One reading for each explanation, invented, with round figures: the examples of docs/evidence-in-words.md. */
import type { Explanation, ExplanationKind, Language } from '@gaugewright/science'
import type { WordingAsk } from '../../src/app/wording/wordingAsk.ts'
import { askOf, DAY, expectationOf, explanationOf, findingOf } from './wordedFinding.ts'

export interface WordExample {
  explanation: Explanation
  askIn: (language: Language) => WordingAsk
}

interface Reading {
  /** As typed, in inches or millimetres. */
  typed: string
  unit: 'in' | 'mm'
  /** Central 80 % and middle of what was expected, in the unit, and the chance of a dry day. */
  expected: [low: number, mid: number, high: number, dry: number]
  odds: number
  change?: Partial<Explanation>
  /** The same for the other day, or the days of the total. */
  span?: [low: number, mid: number, high: number, dry: number]
}

const readings: Readonly<Record<ExplanationKind, Reading>> = {
  stands: { typed: '21.4', unit: 'mm', expected: [24, 46, 81, 0.002], odds: 0.96 },
  decimal: {
    typed: '6.5',
    unit: 'in',
    expected: [0.53, 0.72, 0.96, 0],
    odds: 0.98,
    change: detail({ kind: 'decimal', places: 1 }),
  },
  unit: {
    typed: '4.3',
    unit: 'in',
    expected: [0.13, 0.19, 0.25, 0],
    odds: 0.99,
    change: detail({ kind: 'unit', measuredIn: 'mm' }),
  },
  day: {
    typed: '8.7',
    unit: 'mm',
    expected: [0, 0, 0.3, 0.82],
    odds: 0.64,
    change: { ...detail({ kind: 'day', otherDay: DAY + 1, otherReportedMm: 0 }), impliedMm: 0 },
    span: [3.1, 6.8, 13, 0.03],
  },
  carried: {
    typed: '0.91',
    unit: 'in',
    expected: [0.36, 0.48, 0.63, 0],
    odds: 0.84,
    change: detail({ kind: 'carried', endsOn: DAY, totalMm: 23.114, dayCount: 3 }),
    span: [0.72, 0.88, 1.05, 0],
  },
  'first-fill-lost': {
    typed: '0.21',
    unit: 'in',
    expected: [0.98, 1.14, 1.33, 0],
    odds: 0.71,
    change: { impliedMm: 30.734 },
  },
  'first-fill-only': { typed: '1.00', unit: 'in', expected: [1.74, 2.62, 4.13, 0], odds: 0.79 },
  'false-zero': { typed: '0', unit: 'mm', expected: [9.4, 17.6, 28.2, 0.001], odds: 0.95 },
  wetted: { typed: '0.03', unit: 'in', expected: [0, 0, 0, 0.98], odds: 0.56 },
  transposed: {
    typed: '0.61',
    unit: 'in',
    expected: [0.11, 0.19, 0.31, 0.01],
    odds: 0.93,
    change: detail({ kind: 'transposed', originalText: '4.064' }),
  },
  repeated: {
    typed: '0.25',
    unit: 'in',
    expected: [0.68, 0.9, 1.18, 0],
    odds: 0.81,
    change: detail({ kind: 'repeated', earlierDay: DAY - 1, earlierMm: 6.35 }),
  },
  other: { typed: '64.3', unit: 'mm', expected: [0, 0, 0, 0.982], odds: 0.58 },
}

function detail(one: NonNullable<Explanation['detail']>): Partial<Explanation> {
  return { detail: one }
}

export const wordExamples: readonly WordExample[] = Object.entries(readings).map(([kind, reading]) => {
  const { typed, unit, expected, odds, change = {}, span } = reading
  const mm = (value: number): number => (unit === 'in' ? 25.4 : 1) * value
  const [low, mid, high, dry] = expected
  const finding = findingOf({
    reportedMm: mm(Number(typed)),
    standsOdds: kind === 'stands' ? odds : 1 - odds,
    expectation: expectationOf(mm(low), mm(mid), mm(high), dry),
  })
  const explanation = explanationOf(kind as ExplanationKind, odds, change)
  const isTotal = explanation.detail?.kind === 'carried'
  const days = isTotal ? { firstDay: DAY - 2, lastDay: DAY } : { firstDay: DAY + 1, lastDay: DAY + 1 }
  const expectedSpans = (span === undefined ? [] : [span]).map(([lowMm, midMm, highMm, dryChance]) => ({
    ...{ ...days, lowMm: mm(lowMm), midMm: mm(midMm), highMm: mm(highMm), dryChance, silentDays: 0 },
  }))
  return {
    explanation,
    askIn: (language) => {
      const typedText = language === 'es' ? typed.replace('.', ',') : typed
      return askOf(language, unit, { typedText, finding, expectedSpans })
    },
  }
})
