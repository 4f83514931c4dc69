/** One promise or more for each mistake: what its sentence and its question must say, and what they must not. */
import { describe, expect, it } from 'vitest'
import {
  askOf,
  DAY,
  expectationOf,
  expectedSpans,
  explanationOf,
  findingOf,
} from '../../../test/support/wordedFinding.ts'
import { wordsFor } from './wordFinding.ts'
import type { WordingAsk } from './wordingAsk.ts'

const typed = (typedText: string, reportedMm: number, change: Partial<WordingAsk> = {}): WordingAsk =>
  askOf('en', 'mm', { typedText, finding: findingOf({ reportedMm }), ...change })

describe('decimal', () => {
  it('gives both figures, "about" where the slip may hide digits, exact where it does not', () => {
    const left = wordsFor(explanationOf('decimal', 0.8), typed('7.6', 7.6))
    expect(left.sentence).toContain('slipped one place, about 76 mm typed as 7.6 mm')
    expect(left.question).toContain('is it 7.6, or about 76 millimetres?')
    const right = explanationOf('decimal', 0.8, { detail: { kind: 'decimal', places: 2 } })
    const words = wordsFor(right, typed('470', 470))
    expect(words.sentence).toContain('slipped two places, 4.7 mm typed as 470 mm')
    expect(words.question).toContain('is it 470, or 4.7 millimetres?')
  })

  it('shows no digit that no gauge can show', () => {
    const right = explanationOf('decimal', 0.8, { detail: { kind: 'decimal', places: 2 } })
    expect(wordsFor(right, typed('233.7', 233.7)).sentence).toContain('about 2.3 mm typed as 233.7 mm')
  })

  it('without its detail asks without a second figure, since that could only come from neighbours', () => {
    const { question } = wordsFor(explanationOf('decimal', 0.8, { detail: null, impliedMm: 48.9 }), typed('7.6', 7.6))
    expect(question).toBe('Could you check where the decimal point stands in your note?')
  })
})

describe('unit', () => {
  const inches = explanationOf('unit', 0.8)
  const millimetres = explanationOf('unit', 0.8, { detail: { kind: 'unit', measuredIn: 'mm' }, impliedMm: 18.5 })

  it('the same figure in the other unit is arithmetic: 0.9 in is 22.9 mm', () => {
    const { sentence, question } = wordsFor(inches, typed('0.9', 0.9))
    expect(sentence).toContain('"0.9" was read in inches, not in millimetres; that makes about 23 mm')
    expect(question).toContain('which scale 0.9 was read from: millimetres, or inches?')
  })

  it('owns up where no millimetre scale shows the figure: 0.27, but not 4.3', () => {
    const inInches = (typedText: string) =>
      wordsFor(
        millimetres,
        askOf('en', 'in', { typedText, finding: findingOf({ reportedMm: 25.4 * Number(typedText) }) }),
      ).sentence
    expect(inInches('0.27')).toContain(
      '"0.27" was read in millimetres, not in inches, though millimetre scales show no',
    )
    expect(inInches('4.3')).toContain('"4.3" was read in millimetres, not in inches; that makes about 0.17 in')
  })

  it('a conversion made once too often names the amount in the unit it was read in', () => {
    expect(wordsFor(millimetres, typed('470', 470)).sentence).toContain(
      'an amount of 18.5 mm was taken for inches and converted to 470 mm',
    )
    const inInches = askOf('en', 'in', {
      typedText: '96.38',
      typedUnit: 'mm',
      finding: findingOf({ reportedMm: 96.38 }),
    })
    expect(wordsFor({ ...millimetres, impliedMm: 3.79 }, inInches).sentence).toContain(
      'an amount of 3.8 mm (0.15 in) was taken for inches and converted to 96.38 mm (3.79 in)',
    )
  })
})

describe('day', () => {
  it('names the other day, what was typed there, and what was expected of both', () => {
    const { sentence, question } = wordsFor(explanationOf('day', 0.8), typed('7.6', 7.6))
    expect(sentence).toBe(
      'Probably 7.6 mm belongs to Monday 2 March, for which zero was typed. For Tuesday 3 March, about 48 mm was ' +
        'expected (likely 37 to 59 mm); for Monday 2 March, about 8.4 mm was expected (likely 5.2 to 13 mm).',
    )
    expect(question).toContain('the reading of 7.6 millimetres belongs to: Tuesday 3 March, or Monday 2 March?')
  })

  it('of an empty day asks after the amount that the observer typed for the other', () => {
    const other = { kind: 'day', otherDay: DAY + 1, otherReportedMm: 12.4 } as const
    const { sentence, question } = wordsFor(
      explanationOf('day', 0.8, { detail: other, impliedMm: 12.4 }),
      typed('0', 0),
    )
    expect(sentence).toMatch(
      /^Probably the 12\.4 mm of Wednesday 4 March belongs to this day, for which zero was typed\./,
    )
    expect(question).toContain('the reading of 12.4 millimetres belongs to: Wednesday 4 March, or Tuesday 3 March?')
  })

  it('amid days dated off says too what belongs to this day, and of two zeros names none', () => {
    const amid = wordsFor(explanationOf('day', 0.8, { impliedMm: 48.1 }), typed('7.6', 7.6)).sentence
    expect(amid).toContain('and the 48.1 mm of Wednesday 4 March to this day')
    const zeros = wordsFor(explanationOf('day', 0.8), typed('0', 0))
    expect(zeros.sentence).toContain('the readings around this day are dated a day off, its zero with them')
    expect(zeros.question).not.toMatch(/\d/)
  })

  it('says that the other day has no reading where it has none', () => {
    const silent = explanationOf('day', 0.8, { detail: { kind: 'day', otherDay: DAY - 1, otherReportedMm: null } })
    expect(wordsFor(silent, typed('7.6', 7.6)).sentence).toContain('belongs to Monday 2 March, which has no reading.')
  })
})

describe('carried', () => {
  const spans = (silentDays: number) => expectedSpans.map((span) => ({ ...span, silentDays }))
  const sentence = (silentDays: number) =>
    wordsFor(explanationOf('carried', 0.8), typed('52.4', 52.4, { expectedSpans: spans(silentDays) })).sentence

  it('names its days, what stood before it, and what was expected of all and of one', () => {
    expect(sentence(0)).toBe(
      'Probably 52.4 mm is a total of 3 days (1 to 3 March), with zero typed for the 2 days before. Over these days ' +
        'about 58 mm was expected (likely 44 to 73 mm); for this day alone, about 48 mm was expected (likely 37 to 59 mm).',
    )
    expect(sentence(2)).toContain('with no reading for the 2 days before')
    expect(sentence(1)).toContain('with zeros or no reading for the 2 days before')
  })

  it('over two days speaks of the day before, in the singular', () => {
    const two = explanationOf('carried', 0.8, {
      firstDay: DAY - 1,
      detail: { kind: 'carried', endsOn: DAY, totalMm: 52.4, dayCount: 2 },
    })
    expect(wordsFor(two, typed('52.4', 52.4)).sentence).toContain('with zero typed for the day before')
    const es = askOf('es', 'mm', { typedText: '52,4', finding: findingOf({ reportedMm: 52.4 }) })
    expect(wordsFor(two, es).sentence).toContain('con cero escrito para el día anterior')
  })

  it('a zero that a later total covers is worded from the total, and asked about kindly', () => {
    const by = explanationOf('carried', 0.9, {
      lastDay: DAY + 1,
      firstDay: DAY - 1,
      detail: { kind: 'carried', endsOn: DAY + 1, totalMm: 52.4, dayCount: 3 },
    })
    const { sentence: told, question } = wordsFor(by, typed('0', 0))
    expect(told).toContain(
      'the 52.4 mm of Wednesday 4 March is a total of 3 days (2 to 4 March) that holds this day too',
    )
    expect(question).toContain('counted with the reading of Wednesday 4 March? Either is quite all right.')
  })

  it('does not give one range twice where the other days were expected dry', () => {
    const expectation = expectationOf(44.2, 57.7, 73.1, 0.01)
    const same = typed('52.4', 52.4, { finding: findingOf({ reportedMm: 52.4, expectation }) })
    expect(wordsFor(explanationOf('carried', 0.8), same).sentence).toMatch(
      /Over these days, as for this day alone, about 58 mm was expected \(likely 44 to 73 mm\)\.$/,
    )
  })
})

describe('fills of the tube', () => {
  it('first-fill-lost adds one tube, without asking for figures', () => {
    const { sentence, question } = wordsFor(explanationOf('first-fill-lost', 0.5), typed('7.6', 7.6))
    expect(sentence).toContain('poured out and not added; with it, 7.6 mm becomes 33 mm')
    expect(question).not.toMatch(/\d/)
  })

  it('first-fill-only owns up where the tube alone is more than was expected', () => {
    const tube = (highMm: number) =>
      wordsFor(
        explanationOf('first-fill-only', 0.5),
        typed('25.4', 25.4, {
          finding: findingOf({ reportedMm: 25.4, expectation: expectationOf(2, 9, highMm, 0.02) }),
        }),
      ).sentence
    expect(tube(14)).toContain('though the tube alone is more than expected')
    expect(tube(60)).not.toContain('more than expected')
  })
})

it('false-zero keeps a morning without a look as no reading, and says that it is all right', () => {
  const { sentence, question } = wordsFor(explanationOf('false-zero', 0.95), typed('0', 0))
  expect(sentence).toMatch(/^Very likely the zero stands for a morning without a look at the gauge\./)
  expect(question).toContain('A morning without a look is quite all right')
})

describe('wetted', () => {
  const waters = (reportedMm: number, isSnowSeason: boolean) =>
    wordsFor(explanationOf('wetted', 0.5), typed(String(reportedMm), reportedMm, { isSnowSeason })).sentence

  it('blames dew for what dew can leave alone, and snow in its season alone', () => {
    expect(waters(0.6, false)).toContain('0.6 mm came from dew or a splash, not from rain of that day')
    expect(waters(0.6, true)).toContain('dew, a splash or melting snow')
    expect(waters(4.2, false)).toContain('a sprinkler or a splash')
    expect(waters(4.2, false)).not.toContain('dew')
  })
})

describe('transposed', () => {
  it('shows both figures with as many decimals, so that the eye sees the swap', () => {
    const swap = explanationOf('transposed', 0.9, { detail: { kind: 'transposed', originalText: '18' } })
    expect(wordsFor(swap, typed('10.8', 10.8)).sentence).toContain('"18.0" typed as "10.8"')
    expect(wordsFor(swap, typed('10.8', 10.8)).question).toContain('10.8, or 18.0 millimetres?')
  })

  it('of an inch reading is said in inches: 0.43 typed as 0.34', () => {
    const swap = explanationOf('transposed', 0.9, { detail: { kind: 'transposed', originalText: '10.922' } })
    const ask = askOf('en', 'in', { typedText: '0.34', finding: findingOf({ reportedMm: 8.636 }) })
    expect(wordsFor(swap, ask).sentence).toContain('"0.43" typed as "0.34"')
    const spanish = askOf('es', 'in', { typedText: '0,34', finding: findingOf({ reportedMm: 8.636 }) })
    expect(wordsFor(swap, spanish).sentence).toContain('"0,43" escrito como "0,34"')
  })

  it('names no figures whose digits are not those of what was typed', () => {
    const swap = explanationOf('transposed', 0.9, { detail: { kind: 'transposed', originalText: '3.1' } })
    const { sentence, question } = wordsFor(swap, typed('10.8', 10.8))
    expect(sentence).toContain('two digits changed places. Here')
    expect(question).toBe('Could you check the order of the digits in your note?')
  })

  it('made before a conversion is said in the unit in which the digits are the same', () => {
    const swap = explanationOf('transposed', 0.9, { detail: { kind: 'transposed', originalText: '10.922' } })
    const ask = askOf('en', 'in', { typedText: '8.6', typedUnit: 'mm', finding: findingOf({ reportedMm: 8.6 }) })
    expect(wordsFor(swap, ask).sentence).toContain('0.43 in became 0.34 in')
    expect(wordsFor(swap, ask).question).toContain('before the amount was converted: 0.34, or 0.43 inches?')
  })
})

it('repeated names the earlier day, and that the same amount twice can well happen', () => {
  const { sentence, question } = wordsFor(explanationOf('repeated', 0.5), typed('7.6', 7.6))
  expect(sentence).toMatch(/^Perhaps the amount of Monday 2 March was typed again, 7\.6 mm on both days\./)
  expect(question).toContain('which can well happen')
})

describe('other', () => {
  const other = (reportedMm: number, standsOdds: number) =>
    wordsFor(
      explanationOf('other', 0.8),
      typed(String(reportedMm), reportedMm, { finding: findingOf({ reportedMm, standsOdds }) }),
    ).sentence

  it('offers a shower where there is more than expected and some odds left that the reading stands', () => {
    expect(other(90, 0.15)).toContain('a shower that missed the neighbours would explain it too')
    expect(other(90, 0.02)).not.toContain('shower')
    expect(other(7.6, 0.15)).not.toContain('shower')
  })
})

it('an amount typed in the other unit than the network has is said in both', () => {
  const ask = askOf('en', 'in', { typedText: '0.5', typedUnit: 'mm', finding: findingOf({ reportedMm: 0.5 }) })
  expect(wordsFor(explanationOf('stands', 0.2), ask).sentence).toMatch(
    /^0\.5 mm \(0\.02 in\) is far less than expected/,
  )
})

it('a trace is called a trace', () => {
  const ask = typed('T', 0, { finding: findingOf({ reportedMm: 0, isTrace: true }) })
  expect(wordsFor(explanationOf('wetted', 0.5), ask).sentence).toMatch(/^Perhaps a trace came from dew/)
})
