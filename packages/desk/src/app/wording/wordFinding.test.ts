import { mistakes } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import {
  askOf,
  expectationOf,
  expectedSpans,
  explanationOf,
  figuresIn,
  findingOf,
  quantilesMm,
  sentencesIn,
  wordsIn,
} from '../../../test/support/wordedFinding.ts'
import { findingSentence, observerMessage, wordsFor } from './wordFinding.ts'
import { standsExplanation } from './wordingAsk.ts'

const kinds = ['stands', ...mistakes] as const
const degrees = [0.995, 0.95, 0.8, 0.5, 0.2, 0.02]
const doors = [
  ['en', 'mm'],
  ['en', 'in'],
  ['es', 'mm'],
  ['es', 'in'],
] as const
const blame =
  /\b(wrong|error|mistake|fault|forgot\w*|fail\w*|incorrect|careless|bad|mal|errad[oa]|olvid\w*|culpa|incorrect[oa]|descuid\w*)\b/i
const P10 = quantilesMm[3]!
const P50 = quantilesMm[11]!
const P90 = quantilesMm[19]!

/** What a sentence may name of the finding above: mm, shares in percent, counts and days of the month. */
const namedMm = [7.6, 76, 193, 33, 6.7, P10, P50, P90, ...expectedSpans.flatMap((s) => [s.lowMm, s.midMm, s.highMm])]
const namedPlain = [0, 1, 2, 3] // chances of a dry day, counts of days, 1 to 3 March

describe.each(doors)('words in %s, amounts in %s', (language, unit) => {
  it.each(kinds)('%s: one or two whole sentences of at most 40 words each, and a question', (kind) => {
    for (const odds of degrees) {
      const { sentence, question } = wordsFor(explanationOf(kind, odds), askOf(language, unit))
      expect(sentence).toMatch(/^[\p{Lu}\d"].*\.$/u)
      expect(sentencesIn(sentence).length).toBeLessThanOrEqual(2)
      expect(question).toMatch(/\?/)
      expect(`${sentence} ${question}`).not.toMatch(/undefined|NaN|null|\$\{|\(\(|\)\)| {2}/)
      for (const one of [...sentencesIn(sentence), ...sentencesIn(question)]) expect(wordsIn(one), one).toBeLessThan(41)
    }
  })

  it.each(kinds)('%s: every figure that the sentence names is in the finding, to two figures', (kind) => {
    const { sentence } = wordsFor(explanationOf(kind, 0.8), askOf(language, unit))
    const inUnit = namedMm.map((mm) => (unit === 'in' ? mm / 25.4 : mm))
    for (const figure of figuresIn(sentence)) {
      const isNamed = inUnit.some((value) => Math.abs(value - figure) <= 0.05 * value) || namedPlain.includes(figure)
      expect(isNamed, `${figure} in: ${sentence}`).toBe(true)
    }
  })

  it.each(kinds)('%s: the sentence tells what was expected, in the unit of the network', (kind) => {
    const { sentence } = wordsFor(explanationOf(kind, 0.8), askOf(language, unit))
    const figures = figuresIn(sentence)
    for (const mm of [P10, P50, P90]) expect(figures).toContain(Number((unit === 'in' ? mm / 25.4 : mm).toPrecision(2)))
    expect(sentence).not.toMatch(unit === 'in' ? /\d mm\b/ : /\d in\b/)
  })

  it.each(kinds)('%s: the letter says what was typed and where, thanks, and blames nobody', (kind) => {
    const message = observerMessage([explanationOf(kind, 0.8), explanationOf('other', 0.1)], askOf(language, unit))
    expect(message).toContain(unit === 'in' ? '"0.30"' : '"7.6"')
    expect(message).toContain('Alder Mill')
    expect(message).toContain('Ines Holt')
    expect(message).toMatch(language === 'en' ? /thank you/i : /gracias/i)
    expect(message).toContain(language === 'en' ? 'March' : 'marzo')
    expect(message).not.toMatch(blame)
  })

  it.each(kinds)('%s: the letter holds no figure but what was typed and what follows from it alone', (kind) => {
    const message = observerMessage([explanationOf(kind, 0.8)], askOf(language, unit))
    const typed = unit === 'in' ? 0.3 : 7.6
    const own = [typed, typed * 10, 6.7, Number((6.7 / 25.4).toFixed(2)), 2, 3]
    for (const figure of figuresIn(message)) {
      expect(
        own.some((value) => Math.abs(value - figure) < 1e-9),
        `${figure} in: ${message}`,
      ).toBe(true)
    }
  })

  it('says that it cannot tell where no neighbour reported, and then asks for a second look', () => {
    const ask = askOf(language, unit, { finding: findingOf({ canTell: false }) })
    expect(findingSentence([explanationOf('stands', 0.9)], ask)).toMatch(
      language === 'en' ? /cannot be judged/ : /no se puede valorar/,
    )
    const { question } = wordsFor(standsExplanation(ask.finding), ask)
    expect(observerMessage([explanationOf('decimal', 0.8)], ask)).toContain(question)
  })
})

describe.each(kinds)('%s in two languages', (kind) => {
  it('carries the same figures at every degree, as the head of the finding or below it', () => {
    for (const unit of ['mm', 'in'] as const)
      for (const odds of degrees)
        for (const isFirst of [false, true]) {
          const [en, es] = (['en', 'es'] as const).map((language) =>
            wordsFor(explanationOf(kind, odds), askOf(language, unit), isFirst),
          )
          expect(figuresIn(en!.sentence)).toEqual(figuresIn(es!.sentence))
          expect(figuresIn(en!.question)).toEqual(figuresIn(es!.question))
        }
  })
})

describe('how sure a sentence sounds', () => {
  // Limits of the calibrated terms: Mastrandrea et al. 2010, table 1.
  it.each([
    [0.991, /^Almost certainly /],
    [0.91, /^Very likely /],
    [0.67, /^Probably /],
    [0.34, /^Perhaps /],
    [0.32, /^Possible, but not likely: /],
    [0.09, /^Very unlikely: /],
  ])('odds of %f open with their calibrated term, whatever the mistake', (odds, opening) => {
    for (const kind of mistakes)
      expect(wordsFor(explanationOf(kind, odds), askOf('en', 'mm')).sentence).toMatch(opening)
  })

  it('an unlikely explanation at the head says that none is likely by itself', () => {
    const list = [explanationOf('decimal', 0.3), explanationOf('unit', 0.28), explanationOf('stands', 0.2)]
    expect(findingSentence(list, askOf('en', 'mm'))).toMatch(/^No single explanation is likely; the first: the decimal/)
    expect(findingSentence(list, askOf('es', 'mm'))).toMatch(
      /^Ninguna explicación sola es probable; la primera: la coma/,
    )
  })

  it('a reading that probably stands is not called a slip, one that hardly can is not called right', () => {
    const far = askOf('en', 'mm')
    expect(wordsFor(explanationOf('stands', 0.8), far).sentence).toMatch(/far less than expected, yet probably right/)
    expect(wordsFor(explanationOf('stands', 0.02), far).sentence).toMatch(/very unlikely to be right/)
    const usual = askOf('en', 'mm', { typedText: '45', finding: findingOf({ reportedMm: 45 }) })
    expect(wordsFor(explanationOf('stands', 0.8), usual).sentence).toMatch(/^45 mm fits in with the neighbours/)
    expect(wordsFor(explanationOf('stands', 0.5), usual).sentence).toMatch(/^45 mm fits in .*, yet may or may not be/)
    expect(wordsFor(explanationOf('stands', 0.2), usual).sentence).toMatch(
      /other explanations taken together are likelier/,
    )
  })

  it('the letter asks after a mistake by name only where its odds are a tenth or more', () => {
    const asked = (odds: number) =>
      observerMessage([explanationOf('stands', 1 - odds), explanationOf('transposed', odds)], askOf('en', 'mm'))
    expect(asked(0.1)).toContain('order of the digits')
    expect(asked(0.09)).toContain('look at your note once more')
  })
})

describe('what was expected', () => {
  const sentenceFor = (lowMm: number, midMm: number, highMm: number, dryChance: number, reportedMm = 7.6) => {
    const finding = findingOf({ reportedMm, expectation: expectationOf(lowMm, midMm, highMm, dryChance) })
    const ask = askOf('en', 'mm', { finding, typedText: String(reportedMm) })
    return wordsFor(explanationOf(reportedMm === 0 ? 'false-zero' : 'other', 0.8), ask).sentence
  }

  it('is a dry day with its chance, never 100 %', () => {
    expect(sentenceFor(0, 0, 0.03, 0.962)).toContain('a dry day was expected (96 % chance)')
    expect(sentenceFor(0, 0, 0, 0.9996)).toContain('a dry day was expected (more than 99 % chance)')
  })

  it('is a little at most where dry is likelier than not', () => {
    expect(sentenceFor(0, 0, 2.34, 0.62)).toContain('up to 2.3 mm was likely (62 % chance of a dry day)')
  })

  it('is an amount with its range, to two figures', () => {
    expect(sentenceFor(33.27, 48.61, 121.9, 0.01)).toContain('about 49 mm was expected (likely 33 to 120 mm)')
  })

  it('has the chance of a dry day beside the amount where a zero was typed', () => {
    expect(sentenceFor(0, 11.2, 34.7, 0.12, 0)).toContain('(likely 0 to 35 mm, 12 % chance of a dry day)')
  })

  it('of several declared days is said of those days', () => {
    const ask = askOf('en', 'mm', { finding: findingOf({ spanDays: 3 }) })
    expect(wordsFor(explanationOf('stands', 0.8), ask).sentence).toContain('For these 3 days about 48 mm was expected')
  })
})
