import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Amount,
  addAmounts,
  formatAmount,
  type Language,
  parseAmount,
  roundUm,
  sumAmounts,
  sumFills,
  type Unit,
} from '../../src/index.ts'
import { exactFromDigits } from '../../src/reading/exactNumber.ts'
import { weighAmount } from '../../src/reading/weighAmount.ts'

fc.configureGlobal({ seed: Number(process.env.LAWS_SEED ?? 20_260_329), numRuns: Number(process.env.LAWS_RUNS ?? 200) })

const amount = fc.oneof(
  fc.constant<Amount>({ amountUm: 0, isTrace: true }),
  fc.integer({ min: 0, max: 1_825_000 }).map((amountUm): Amount => ({ amountUm, isTrace: false })),
)
const unit = fc.constantFrom<Unit>('in', 'mm')
const language = fc.constantFrom<Language>('en', 'es')
const form = fc.constantFrom('number' as const, 'full' as const)

describe('laws of amounts', () => {
  it('what the gauge can show comes back from its text, in both units, languages and forms, 0.00-11.00 in', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_100 }), unit, language, form, (steps, chosen, words, shape) => {
        const amountUm = chosen === 'in' ? steps * 254 : Math.min(steps, 2_794) * 100
        const text = formatAmount({ amountUm, isTrace: false }, chosen, words, shape)
        expect(parseAmount(text, { unit: chosen })).toEqual({ kind: 'amount', amountUm, isTrace: false, unit: chosen })
      }),
    )
    for (let hundredths = 0; hundredths <= 1_100; hundredths++) {
      const text = formatAmount({ amountUm: hundredths * 254, isTrace: false }, 'in')
      const answer = parseAmount(text, { unit: 'in' })
      if (answer.kind !== 'amount' || answer.amountUm !== hundredths * 254) expect(answer).toBe(text)
    }
  })

  it('text that format wrote is written the same again after parsing', () => {
    fc.assert(
      fc.property(amount, unit, language, form, (given, chosen, words, shape) => {
        const text = formatAmount(given, chosen, words, shape)
        const answer = parseAmount(text, { unit: chosen, capacityUm: null, decimalMark: words === 'es' ? ',' : '.' })
        if (answer.kind === 'problem' && answer.code === 'AMOUNT_ABOVE_RECORD') return // rounded up past the record
        if (answer.kind !== 'amount') throw new Error(`${text}: ${answer.kind}`)
        expect(formatAmount(answer, chosen, words, shape)).toBe(text)
      }),
    )
  })

  it('sums do not depend on order or grouping, traces included', () => {
    fc.assert(
      fc.property(amount, amount, amount, (one, two, three) => {
        expect(addAmounts(addAmounts(one, two), three)).toEqual(addAmounts(one, addAmounts(two, three)))
        expect(addAmounts(one, two)).toEqual(addAmounts(two, one))
        expect(sumAmounts([three, one, two])).toEqual(addAmounts(addAmounts(one, two), three))
      }),
    )
  })

  it('a sum is a trace exactly where all is zero and something is a trace', () => {
    fc.assert(
      fc.property(fc.array(amount, { minLength: 1, maxLength: 6 }), (amounts) => {
        const sum = sumAmounts(amounts)
        const isDryOrTrace = amounts.every(({ amountUm }) => amountUm === 0)
        expect(sum?.isTrace).toBe(isDryOrTrace && amounts.some(({ isTrace }) => isTrace))
      }),
    )
  })

  it('fills within tube and gauge sum exactly; splitting a fill changes nothing', () => {
    const fill = fc.integer({ min: 0, max: 100 })
    fc.assert(
      fc.property(fc.array(fill, { minLength: 1, maxLength: 11 }), fc.nat(), (fills, cut) => {
        const um = (hundredths: number) => ({ amountUm: hundredths * 254, isTrace: false })
        const [first = 0, ...others] = fills
        const part = cut % (first + 1)
        expect(sumFills([um(part), um(first - part), ...others.map(um)])).toEqual(sumFills(fills.map(um)))
      }),
    )
  })

  it('rounding goes to a whole step, moves by half a step at most, and twice is once', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2_000_000 }), fc.constantFrom(254, 100, 200), (um, stepUm) => {
        const rounded = roundUm(um, stepUm)
        expect(rounded % stepUm).toBe(0)
        expect(Math.abs(rounded - um) * 2).toBeLessThanOrEqual(stepUm)
        expect(roundUm(rounded, stepUm)).toBe(rounded)
      }),
    )
  })
})

describe('laws of parseAmount', () => {
  const typed = fc.oneof(
    fc.string(),
    fc.string({ unit: fc.constantFrom(...'0123456789.,/ -+eTt"oOlim′½−０'), maxLength: 12 }),
  )
  const options = fc.record({
    unit,
    decimalMark: fc.constantFrom('.' as const, ',' as const, 'either' as const),
    finer: fc.constantFrom('ask' as const, 'keep' as const, 'inchHundredths' as const),
    resolutionUm: fc.constantFrom(null, 254, 100, 200),
    capacityUm: fc.constantFrom(null, 279_400, 508_000),
    language,
  })

  it('any text gives an answer; an amount is whole micrometres from 0 to the record, a trace is 0', () => {
    fc.assert(
      fc.property(typed, options, (text, ask) => {
        const answer = parseAmount(text, ask)
        if (answer.kind !== 'amount') return
        expect(Number.isSafeInteger(answer.amountUm)).toBe(true)
        expect(answer.amountUm).toBeGreaterThanOrEqual(0)
        expect(answer.amountUm).toBeLessThanOrEqual(ask.capacityUm ?? 1_825_000)
        if (answer.isTrace) expect(answer.amountUm).toBe(0)
      }),
    )
  })

  it('every question offers something, and what it offers, typed and confirmed, is just that', () => {
    fc.assert(
      fc.property(typed, options, (text, ask) => {
        const answer = parseAmount(text, ask)
        if (answer.kind !== 'question') return
        expect(answer.choices.length).toBeGreaterThan(0)
        const mark = ask.decimalMark === 'either' ? (ask.language === 'es' ? ',' : '.') : ask.decimalMark
        for (const choice of answer.choices) {
          const again = parseAmount(choice.text, { ...ask, finer: 'keep', decimalMark: mark, confirmed: true })
          if (choice.kind === 'missing') expect(again).toEqual({ kind: 'missing' })
          else
            expect(again).toEqual({
              kind: 'amount',
              amountUm: choice.amountUm,
              isTrace: choice.isTrace,
              unit: again.kind === 'amount' && choice.isTrace ? again.unit : choice.unit,
            })
        }
      }),
    )
  })

  it('the quick way for plain numbers gives what the careful way gives', () => {
    const plain = fc.tuple(fc.integer({ min: 0, max: 9_999 }), fc.constantFrom('', '0', '5', '25', '04', '99'))
    fc.assert(
      fc.property(plain, options, ([whole, decimals], ask) => {
        const text = decimals === '' ? String(whole) : `${whole}.${decimals}`
        const careful = weighAmount(exactFromDigits(String(whole), decimals), { ...ask, seen: text })
        expect(parseAmount(text, ask)).toEqual(careful)
      }),
    )
  })

  it('spaces around, a unit behind, and wide digits change nothing', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_100 }), (hundredths) => {
        const text = (hundredths / 100).toFixed(2)
        const want = { kind: 'amount', amountUm: hundredths * 254, isTrace: false, unit: 'in' }
        const wide = [...text].map((sign) => String.fromCharCode(sign.charCodeAt(0) + 0xfee0)).join('')
        for (const same of [`\u00a0${text} `, `${text}"`, `${text} inches`, wide, text.replace('.', ',')]) {
          expect(parseAmount(same, { unit: 'in' })).toEqual(want)
        }
      }),
    )
  })
})
