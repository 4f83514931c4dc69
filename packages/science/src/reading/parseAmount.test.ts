import { describe, expect, it } from 'vitest'
import type { AmountAnswer } from './amountAnswer.ts'
import { type ParseAmountOptions, parseAmount } from './parseAmount.ts'

/** `1016 in`, `0T in`, `missing`, or code and choices. */
function said(text: string, options: ParseAmountOptions): string {
  const answer = parseAmount(text, options)
  switch (answer.kind) {
    case 'amount':
      return `${answer.amountUm}${answer.isTrace ? 'T' : ''} ${answer.unit}`
    case 'missing':
      return 'missing'
    case 'question':
      return `${answer.code}: ${answer.choices.map((choice) => choice.text).join(' | ')}`
    case 'problem':
      return answer.code
  }
}
const inches = { unit: 'in' } as const
const mm = { unit: 'mm' } as const

describe('parseAmount, clear answers', () => {
  it.each([
    ['.04', '1016 in'],
    ['0.04', '1016 in'],
    ['0,4', '10160 in'],
    [',4', '10160 in'],
    ['4/100', '1016 in'],
    ['1 1/4', '31750 in'],
    ['1-1/4', '31750 in'],
    ['1¼', '31750 in'],
    ['½', '12700 in'],
    [' 1.25"', '31750 in'],
    ['1.25”', '31750 in'],
    ["1.25''", '31750 in'],
    ['1.25 in.', '31750 in'],
    ['1,25 pulgadas', '31750 in'],
    ['"0.25"', '6350 in'],
    ["'0.25", '6350 in'],
    ['\u00a00.25\u200b', '6350 in'],
    ['+0.10', '2540 in'],
    ['0.1', '2540 in'],
    ['0.100', '2540 in'],
    ['4.', '101600 in'],
    ['4 hundredths', '1016 in'],
    ['１．２５', '31750 in'],
    ['٠٫٢٥', '6350 in'],
    ['0·25', '6350 in'],
    ['1e-1', '2540 in'],
    ['2.5E-1', '6350 in'],
    ['0.30000000000000004', '7620 in'],
    ['0', '0 in'],
    ['00', '0 in'],
    ['0.00', '0 in'],
    ['-0.00', '0 in'],
    ['nil', '0 in'],
    ['Zero', '0 in'],
    ['cero', '0 in'],
    ['sin precipitación', '0 in'],
    ['12 mm', '12000 mm'],
    ['6,4mm', '6400 mm'],
    ['30 l/m²', '30000 mm'],
    ['11.00', '279400 in'],
  ])('%j on a sheet of inches is %s', (text, expected) => {
    expect(said(text, inches)).toBe(expected)
  })

  it.each([
    ['0,4', '400 mm'],
    ['12', '12000 mm'],
    ['12.7', '12700 mm'],
    ['12.70', '12700 mm'],
    ['0.25 in', '6350 in'],
    ['3/5', '600 mm'],
    ['12.0 milímetros', '12000 mm'],
    ['1,5 litros', '1500 mm'],
  ])('%j on a sheet of millimetres is %s', (text, expected) => {
    expect(said(text, mm)).toBe(expected)
  })

  it.each([
    'T',
    't',
    'tr',
    'Tr.',
    'trace',
    'TRACE',
    'traza',
    'inap.',
    'Inapreciable',
    'Ip',
    '0.00 T',
    '0T',
    '<0.01',
    'Ｔ',
  ])('parseAmount(%j) is a trace, not zero and not missing', (text) => {
    expect(parseAmount(text, inches)).toEqual({ kind: 'amount', amountUm: 0, isTrace: true, unit: 'in' })
  })

  it.each(['', ' ', '\u00a0', '\ufeff', 'M', 'NA', 'n/a', '#N/A', 'NaN', 'null', 'not read', 's/d', 'sin datos'])(
    'parseAmount(%j) is a missing reading, not zero',
    (text) => {
      expect(parseAmount(text, inches)).toEqual({ kind: 'missing' })
    },
  )

  it('a mark for missing that the sheet declares is missing, and only that one', () => {
    const options = { unit: 'mm', missingMarks: ['-9999', '99.9', 'Away'] } as const
    expect(said('-9999', options)).toBe('missing')
    expect(said('99.9', options)).toBe('missing')
    expect(said(' away ', options)).toBe('missing')
    expect(said('-999', options)).toBe('AMOUNT_NEGATIVE')
    expect(said('99.8', options)).toBe('99800 mm')
  })

  it('a declared decimal mark settles what would be asked without it', () => {
    expect(said('1,250', { unit: 'in', decimalMark: ',' })).toBe('31750 in')
    expect(said('1.250', { unit: 'in', decimalMark: '.' })).toBe('31750 in')
    expect(said('4,', { unit: 'in', decimalMark: ',' })).toBe('101600 in')
  })

  it('a thousand with both marks is read by the last one, and asked about where the sheet says otherwise', () => {
    const archive = { unit: 'mm', capacityUm: null } as const
    expect(said('1,234.5', archive)).toBe('1234500 mm')
    expect(said('1.234,5', archive)).toBe('1234500 mm')
    expect(said('1,234.5', { ...archive, decimalMark: ',' })).toBe('AMOUNT_DECIMAL_UNCLEAR: 1234,5 mm')
  })
})

describe('parseAmount, questions', () => {
  it.each([
    ['1,250', mm, 'AMOUNT_DECIMAL_UNCLEAR: 1.25 mm | 1250.0 mm'],
    ['1.250', mm, 'AMOUNT_DECIMAL_UNCLEAR: 1.25 mm | 1250.0 mm'],
    ['1 250', mm, 'AMOUNT_DECIMAL_UNCLEAR: 1.25 mm | 1250.0 mm'],
    ['1,250', inches, 'AMOUNT_DECIMAL_UNCLEAR: 1.25 in'], // 1250 in have never fallen
    ['1,250', { unit: 'mm', decimalMark: '.' } as const, 'AMOUNT_DECIMAL_UNCLEAR: 1.25 mm | 1250.0 mm'],
    ['1.250', { unit: 'mm', decimalMark: ',' } as const, 'AMOUNT_DECIMAL_UNCLEAR: 1,25 mm | 1250,0 mm'],
    ['04', inches, 'AMOUNT_DECIMAL_UNCLEAR: 0.04 in | 0.40 in | 4.00 in'],
    ['04', mm, 'AMOUNT_DECIMAL_UNCLEAR: 0.4 mm | 4.0 mm'],
    ['0 25', inches, 'AMOUNT_DECIMAL_UNCLEAR: 0.25 in'],
    ['0..4', inches, 'AMOUNT_DECIMAL_UNCLEAR: 0.40 in'],
    ['4,', inches, 'AMOUNT_DECIMAL_UNCLEAR: 4.00 in'],
    ['1/25', inches, 'AMOUNT_FRACTION_UNCLEAR: 1.25 in | 0.04 in'],
    ['1/3', inches, 'AMOUNT_FRACTION_UNCLEAR: 1.30 in'],
    ['O.25', inches, 'AMOUNT_LETTER_FOR_DIGIT: 0.25 in'],
    ['l.2', mm, 'AMOUNT_LETTER_FOR_DIGIT: 1.2 mm'],
    ['none', inches, 'AMOUNT_ZERO_OR_MISSING: 0 | '],
    ['—', inches, 'AMOUNT_ZERO_OR_MISSING: 0 | '],
    ['nada', mm, 'AMOUNT_ZERO_OR_MISSING: 0 | '],
    ['0.01 T', inches, 'AMOUNT_TRACE_UNCLEAR: T | 0.01 in'],
    ['<1', inches, 'AMOUNT_TRACE_UNCLEAR: T | 1.00 in'],
    ['1.2 cm', mm, 'AMOUNT_UNIT_UNUSUAL: 12.0 mm | 1.2 mm'],
    ['1.00+0.97+0.88+0.92', inches, 'AMOUNT_IS_A_SUM: 3.77 in'],
    ['11.50', inches, 'AMOUNT_ABOVE_CAPACITY: 1.15 in | 11.5 mm | 11.50 in'],
    ['25', inches, 'AMOUNT_ABOVE_CAPACITY: 2.50 in | 0.25 in | 25.0 mm | 25.00 in'],
    ['300', mm, 'AMOUNT_ABOVE_CAPACITY: 30.0 mm | 3.0 mm | 300.0 mm'],
    ['0.255', inches, 'AMOUNT_FINER_THAN_GAUGE: 0.25 in | 0.26 in'],
    ['1/8', inches, 'AMOUNT_FINER_THAN_GAUGE: 0.12 in | 0.13 in'],
    ['0.004', inches, 'AMOUNT_FINER_THAN_GAUGE: T | 0.01 in'],
    ['0.25', mm, 'AMOUNT_FINER_THAN_GAUGE: 0.2 mm | 0.3 mm | 0.25 in'],
    ['0.7', { unit: 'mm', resolutionUm: 200 } as const, 'AMOUNT_FINER_THAN_GAUGE: 0.6 mm | 0.8 mm'],
  ])('%j asks, and takes nothing for granted', (text, options, expected) => {
    expect(said(text, options)).toBe(expected)
  })

  it('a question confirmed is taken as typed', () => {
    expect(said('11.50', { unit: 'in', confirmed: true })).toBe('292100 in')
    expect(said('0.255', { unit: 'in', confirmed: true })).toBe('6477 in')
  })

  it('words the question in English and Spanish, with what was typed and what it could be', () => {
    const english = parseAmount('1,250', mm) as Extract<AmountAnswer, { kind: 'question' }>
    expect(english.seen).toBe('1,250')
    expect(english.advice).toContain('"1,250" could be 1.25 mm or 1250.0 mm')
    const spanish = parseAmount('1,250', { unit: 'mm', language: 'es' }) as Extract<AmountAnswer, { kind: 'question' }>
    expect(spanish.advice).toContain('«1,250» puede ser 1,25 mm o 1250,0 mm')
  })
})

describe('parseAmount, problems', () => {
  it.each([
    ['1.2.3', 'AMOUNT_TWO_POINTS'],
    ['1,2,3', 'AMOUNT_TWO_POINTS'],
    ['-0.25', 'AMOUNT_NEGATIVE'],
    ['−0.25', 'AMOUNT_NEGATIVE'],
    ['– 0.25 in', 'AMOUNT_NEGATIVE'],
    ['-9999', 'AMOUNT_NEGATIVE'],
    ['71.86', 'AMOUNT_ABOVE_RECORD'], // 1825.2 mm
    ['80000', 'AMOUNT_ABOVE_RECORD'],
    ['1e99', 'AMOUNT_ABOVE_RECORD'],
    ['1.20+0.30', 'FILL_ABOVE_TUBE'],
    ['.', 'AMOUNT_UNREADABLE'],
    ['in', 'AMOUNT_UNREADABLE'],
    ['abc', 'AMOUNT_UNREADABLE'],
    ['Infinity', 'AMOUNT_UNREADABLE'],
    ['0x1F', 'AMOUNT_UNREADABLE'],
    ['0.2-0.3', 'AMOUNT_UNREADABLE'],
    ['7:00', 'AMOUNT_UNREADABLE'],
    ['12/03', 'AMOUNT_UNREADABLE'],
    ['1/0', 'AMOUNT_UNREADABLE'],
    ['1²', 'AMOUNT_UNREADABLE'],
    ['(0.25)', 'AMOUNT_UNREADABLE'],
    ['0.25 ft', 'AMOUNT_UNREADABLE'],
    ['T+', 'AMOUNT_UNREADABLE'],
    ['9'.repeat(5000), 'AMOUNT_UNREADABLE'],
  ])('%j is refused', (text, code) => {
    const answer = parseAmount(text, inches)
    expect(answer.kind).toBe('problem')
    expect(said(text, inches)).toBe(code)
  })

  it('shows what was seen, cut short where it is long', () => {
    const answer = parseAmount(`  ${'z'.repeat(500)}`, inches)
    expect(answer).toMatchObject({ kind: 'problem', seen: `${'z'.repeat(60)}…` })
  })

  it('allows as much as ever fell in a day, times the days of a total', () => {
    const archive = { unit: 'mm', capacityUm: null } as const
    expect(said('1825', archive)).toBe('1825000 mm')
    expect(said('1825.1', archive)).toBe('AMOUNT_ABOVE_RECORD')
    expect(said('1825.1', { ...archive, dayCount: 2 })).toBe('1825100 mm')
  })
})

describe('parseAmount, archives', () => {
  const archive = { unit: 'mm', finer: 'inchHundredths', capacityUm: null } as const
  it('gives back the hundredths of an inch that were written as millimetres with one or two decimals', () => {
    expect(said('28.45', archive)).toBe(`${112 * 254} mm`)
    expect(said('0.3', archive)).toBe('254 mm')
    expect(said('0.25', archive)).toBe('254 mm')
    expect(said('6.35', archive)).toBe('6350 mm')
    expect(said('119.38', archive)).toBe(`${470 * 254} mm`)
    expect(said('0', archive)).toBe('0 mm')
  })
  it('understands a program that dropped a last zero', () => {
    expect(said('127', archive)).toBe('127000 mm') // 5.00 in
    expect(said('45.7', archive)).toBe(`${180 * 254} mm`) // 45.72 written with one decimal
  })
  it('asks where no hundredth of an inch gives the figure', () => {
    expect(said('0.40', archive)).toBe('AMOUNT_FINER_THAN_GAUGE: 0.254 mm | 0.508 mm')
  })
  it('keeps figures as written where the sheet says so, to the micrometre', () => {
    const keep = { unit: 'mm', finer: 'keep' } as const
    expect(said('4.44', keep)).toBe('4440 mm')
    expect(said('0.007', { ...keep, decimalMark: '.' })).toBe('7 mm')
    expect(said('0.00071', keep)).toBe('AMOUNT_FINER_THAN_GAUGE: T | 0.1 mm')
  })
})
