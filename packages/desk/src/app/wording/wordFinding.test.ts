import {
  type Explanation,
  type ExplanationDetail,
  expectationLevels,
  type Finding,
  mistakes,
} from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { figuresFor } from './figures.ts'
import { findingSentence, observerMessage, wordsFor } from './wordFinding.ts'
import type { WordingAsk } from './wordingAsk.ts'

const DAY = 20_515 // 2026-03-03, a Tuesday
/** Quantiles that no figure of a message could hit by chance: 33.3 mm at the lowest, growing by 1.37 mm a level. */
const quantilesMm = expectationLevels.map((_, index) => 33.3 + 1.37 * index)

function findingOf(change: Partial<Finding> = {}): Finding {
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
    expectation: { dryChance: 0.01, meanMm: 47.7, quantilesMm },
    neighbourCount: 9,
    ...change,
  }
}

const details: Partial<Record<Explanation['kind'], ExplanationDetail>> = {
  decimal: { kind: 'decimal', places: -1 },
  unit: { kind: 'unit', measuredIn: 'in' },
  day: { kind: 'day', otherDay: DAY - 1, otherReportedMm: 0 },
  carried: { kind: 'carried', endsOn: DAY, totalMm: 7.6, dayCount: 3 },
  transposed: { kind: 'transposed', originalText: '6.7' },
  repeated: { kind: 'repeated', earlierDay: DAY - 1, earlierMm: 7.6 },
}

function explanationOf(kind: Explanation['kind'], odds: number): Explanation {
  return {
    kind,
    odds,
    impliedMm: 48.85,
    impliedP10Mm: 37.41,
    impliedP90Mm: 59.33,
    firstDay: kind === 'carried' ? DAY - 2 : DAY,
    lastDay: DAY,
    detail: details[kind] ?? null,
  }
}

function askOf(language: 'en' | 'es', unit: 'mm' | 'in', finding = findingOf()): WordingAsk {
  return {
    language,
    unit,
    gaugeName: 'Alder Mill',
    observerName: 'Ines Holt',
    typedText: unit === 'in' ? '0.30' : '7.6',
    typedUnit: unit,
    finding,
  }
}

const kinds = ['stands', ...mistakes] as const
const doors = [
  ['en', 'mm'],
  ['en', 'in'],
  ['es', 'mm'],
  ['es', 'in'],
] as const
const blame =
  /\b(wrong|error|mistake|fault|forgot|fail|incorrect|careless|bad|mal|errad[oa]|error|olvid\w*|culpa|incorrect[oa])\b/i

describe.each(doors)('words in %s, amounts in %s', (language, unit) => {
  it.each(kinds)('%s: a whole sentence and a question', (kind) => {
    const words = wordsFor(explanationOf(kind, 0.8), askOf(language, unit))
    expect(words.sentence).toMatch(/\.$/)
    expect(words.question).toMatch(/\?/)
    expect(`${words.sentence} ${words.question}`).not.toMatch(/undefined|NaN|null|\$\{/)
  })

  it.each(kinds)('%s: the sentence tells the coordinator what was expected, in the unit of the network', (kind) => {
    const { sentence } = wordsFor(explanationOf(kind, 0.8), askOf(language, unit))
    expect(sentence).toContain(figuresFor(language, unit).amount(quantilesMm[19] ?? 0))
    expect(sentence).not.toMatch(unit === 'in' ? /\d mm\b/ : /\d in\b/)
  })

  it.each(kinds)('%s: the message says what was typed and where, thanks, and blames nobody', (kind) => {
    const message = observerMessage([explanationOf(kind, 0.8), explanationOf('other', 0.1)], askOf(language, unit))
    expect(message).toContain(unit === 'in' ? '"0.30"' : '"7.6"')
    expect(message).toContain('Alder Mill')
    expect(message).toContain('Ines Holt')
    expect(message).toMatch(language === 'en' ? /thank you/i : /gracias/i)
    expect(message).toContain(language === 'en' ? 'March' : 'marzo')
    expect(message).not.toMatch(blame)
  })

  it.each(kinds)('%s: the message holds no amount that neighbours made expected', (kind) => {
    const message = observerMessage([explanationOf(kind, 0.8)], askOf(language, unit))
    const figures = figuresFor(language, unit)
    const hidden = [...quantilesMm, 47.7, 48.85, 37.41, 59.33].map((amountMm) => figures.plain(amountMm))
    for (const figure of hidden) expect(message).not.toContain(figure)
  })

  it('says that it cannot tell where no neighbour reported', () => {
    const sentence = findingSentence(
      [explanationOf('stands', 0.9)],
      askOf(language, unit, findingOf({ canTell: false })),
    )
    expect(sentence).toMatch(language === 'en' ? /cannot be judged/ : /no se puede valorar/)
  })
})

it('a slipped point is asked with both figures, the typed one and the one it may have been', () => {
  const message = observerMessage([explanationOf('decimal', 0.8)], askOf('en', 'mm'))
  expect(message).toContain('is it 7.6 mm, or 76.0 mm?')
})

it('without its detail a slip is asked without a second figure, since that could only come from neighbours', () => {
  for (const kind of ['decimal', 'transposed'] as const) {
    const message = observerMessage([{ ...explanationOf(kind, 0.8), detail: null }], askOf('en', 'mm'))
    expect(message).not.toContain('48.9')
    expect(message).not.toContain('48.8')
  }
})

it('a zero that a later total covers is worded from the total, the total itself from its days', () => {
  const zero = findingOf({ reportedMm: 0, day: DAY - 1 })
  const carriedBy: Explanation = {
    ...explanationOf('carried', 0.9),
    detail: { kind: 'carried', endsOn: DAY, totalMm: 52.4, dayCount: 3 },
  }
  expect(wordsFor(carriedBy, askOf('en', 'mm', zero)).sentence).toContain('52.4 mm of Tuesday 3 March')
  expect(wordsFor(explanationOf('carried', 0.9), askOf('en', 'mm')).sentence).toContain('total of 3 days')
})

it('the head sentence follows the odds: a reading that probably stands is not called a slip', () => {
  const list = [explanationOf('stands', 0.7), explanationOf('decimal', 0.2)]
  expect(findingSentence(list, askOf('en', 'mm'))).toContain('unusual here, but may well be right')
  const usual = askOf('en', 'mm', findingOf({ reportedMm: 45 }))
  expect(findingSentence(list, usual)).toContain('fits this gauge')
})

it('days are written as the readers of each language and unit write them', () => {
  expect(figuresFor('en', 'mm').day(DAY)).toBe('Tuesday 3 March')
  expect(figuresFor('en', 'in').day(DAY)).toBe('Tuesday, March 3')
  expect(figuresFor('es', 'mm').day(DAY)).toBe('martes, 3 de marzo')
  expect(figuresFor('es', 'mm').amount(12.35)).toBe('12,4 mm')
})

it('an amount that no slip explains may be a shower of its own, where it is more than expected and only there', () => {
  const other = explanationOf('other', 0.8)
  const more = askOf('en', 'mm', findingOf({ reportedMm: 90 }))
  expect(wordsFor(other, more).sentence).toContain('A shower between the gauges')
  expect(wordsFor(other, askOf('en', 'mm')).sentence).not.toContain('shower')
})
