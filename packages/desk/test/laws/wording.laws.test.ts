/** Whatever a finding holds, its words keep the promises: short, the same figures in both languages, nothing of neighbours. */
import { type ExplanationDetail, expectationLevels, mistakes } from '@gaugewright/science'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { findingSentence, observerMessage, wordsFor } from '../../src/app/wording/wordFinding.ts'
import { askOf, DAY, explanationOf, figuresIn, findingOf, sentencesIn, wordsIn } from '../support/wordedFinding.ts'

const tenths = (most: number) => fc.integer({ min: 0, max: 10 * most }).map((n) => n / 10)
const anyDetail: fc.Arbitrary<ExplanationDetail | null> = fc.oneof(
  fc.constant(null),
  fc.constantFrom(-2, -1, 1, 2).map((places) => ({ kind: 'decimal', places }) as const),
  fc.constantFrom('mm', 'in').map((measuredIn) => ({ kind: 'unit', measuredIn }) as const),
  fc
    .tuple(fc.constantFrom(-1, 1), fc.option(tenths(80)))
    .map(([shift, otherReportedMm]) => ({ kind: 'day', otherDay: DAY + shift, otherReportedMm }) as const),
  fc
    .tuple(fc.integer({ min: 0, max: 6 }), tenths(200))
    .map(([later, totalMm]) => ({ kind: 'carried', endsOn: DAY + later, totalMm, dayCount: 7 }) as const),
  tenths(90).map((mm) => ({ kind: 'transposed', originalText: String(mm) }) as const),
)

it('holds for any reading, expectation, unit and explanation', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('stands' as const, ...mistakes),
      fc.record({
        reportedMm: tenths(300),
        odds: fc.double({ min: 0, max: 1, noNaN: true }),
        dryChance: fc.double({ min: 0, max: 1, noNaN: true }),
        midMm: fc.double({ min: 0, max: 150, noNaN: true }),
        spread: fc.double({ min: 1.05, max: 9, noNaN: true }),
        detail: anyDetail,
        unit: fc.constantFrom('mm' as const, 'in' as const),
        typedUnit: fc.constantFrom('mm' as const, 'in' as const),
        isSnowSeason: fc.boolean(),
        isFirst: fc.boolean(),
      }),
      (kind, any) => {
        const quantilesMm = expectationLevels.map((level) => any.midMm * any.spread ** (4 * (level - 0.5)))
        const finding = findingOf({
          reportedMm: any.reportedMm,
          standsOdds: 1 - any.odds,
          expectation: { dryChance: any.dryChance, meanMm: any.midMm, quantilesMm },
        })
        const isOwnDetail = any.detail === null || any.detail.kind === kind
        const endsOn = any.detail?.kind === 'carried' && kind === 'carried' ? any.detail.endsOn : DAY
        const explanation = explanationOf(kind, any.odds, {
          ...(isOwnDetail && { detail: any.detail }),
          firstDay: kind === 'carried' ? endsOn - 6 : DAY,
          lastDay: endsOn,
        })
        const typedText = String(any.typedUnit === 'in' ? Number((any.reportedMm / 25.4).toFixed(3)) : any.reportedMm)
        const [en, es] = (['en', 'es'] as const).map((language) =>
          askOf(language, any.unit, { finding, typedText, typedUnit: any.typedUnit, isSnowSeason: any.isSnowSeason }),
        )
        const texts = [en!, es!].map((ask) => wordsFor(explanation, ask, any.isFirst))
        expect(figuresIn(texts[0]!.sentence)).toEqual(figuresIn(texts[1]!.sentence))
        expect(figuresIn(texts[0]!.question)).toEqual(figuresIn(texts[1]!.question))
        for (const { sentence, question } of texts) {
          expect(`${sentence} ${question}`).not.toMatch(/undefined|NaN|null|Infinity|-\d|\(\(|\)\)| {2}/)
          for (const one of sentencesIn(`${sentence} ${question}`)) expect(wordsIn(one), one).toBeLessThanOrEqual(40)
        }
        expect(findingSentence([explanation], en!)).not.toBe('')
      },
    ),
    { seed: 43, numRuns: 3000 },
  )
})

it('the letter is the same whatever the neighbours had', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('stands' as const, ...mistakes),
      fc.constantFrom('en' as const, 'es' as const),
      fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 23, maxLength: 23 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (kind, language, amounts, dryChance) => {
        const quantilesMm = [...amounts].sort((a, b) => a - b)
        const expectation = { dryChance, meanMm: amounts[0]!, quantilesMm }
        const spans = [
          { firstDay: DAY - 1, lastDay: DAY - 1, lowMm: 1, midMm: amounts[1]!, highMm: 300, dryChance, silentDays: 0 },
        ]
        const letter = (change: object) => observerMessage([explanationOf(kind, 0.8)], askOf(language, 'mm', change))
        expect(letter({ finding: findingOf({ expectation }), expectedSpans: spans })).toBe(letter({}))
      },
    ),
    { seed: 44, numRuns: 500 },
  )
})
