import { describe, expect, it } from 'vitest'
import { fill } from './fill.ts'
import { makeFormat } from './format.ts'
import { messages } from './messages.ts'
import { oddsInWords } from './oddsInWords.ts'

const inches = makeFormat(messages.en, 'en', 'in', 'UTC')
const millimetres = makeFormat(messages.es, 'es', 'mm', 'UTC')

describe('makeFormat', () => {
  it('shows inches to hundredths and millimetres to tenths, with the decimal mark of the language', () => {
    expect(inches.um(10_160)).toBe('0.40 in')
    expect(millimetres.um(12_700)).toBe('12,7 mm')
    expect(inches.mm(25.4)).toBe('1.00 in')
  })
  it('keeps trace, zero and no amount apart', () => {
    expect([inches.amount(0, true), inches.amount(0, false), inches.amount(null, false)]).toEqual([
      'trace',
      '0.00 in',
      '–',
    ])
    expect(inches.amountBare(0, true)).toBe('T')
  })
  it('never shows near-certainty as 100 %, nor a small chance as 0 %', () => {
    expect([0.9996, 0.004, 0.5, 0, 1].map(inches.percent)).toEqual(['over 99 %', 'under 1 %', '50 %', '0 %', '100 %'])
  })
  it('gives distances, heights and bearings in the units and letters of the reader', () => {
    expect([inches.distance(1609.344), millimetres.distance(1500)]).toEqual(['1.0 mi', '1,5 km'])
    expect(inches.height(304.8)).toBe('1000 ft')
    expect([0, 22.5, 247.5, 359].map(inches.compass)).toEqual(['N', 'NNE', 'WSW', 'N'])
    expect(millimetres.compass(270)).toBe('O')
  })
  it('names a day by its date whatever the zone of the computer', () => {
    expect(inches.dayShort('2026-11-26')).toBe('Thu, Nov 26')
  })
})

it('oddsInWords follows the calibrated terms at their limits', () => {
  const say = (odds: number) => oddsInWords(odds, messages.en)
  expect([0.995, 0.95, 0.7, 0.5, 0.2, 0.05].map(say)).toEqual([
    'virtually certain',
    'very likely',
    'likely',
    'about as likely as not',
    'unlikely',
    'very unlikely',
  ])
})

it('fill leaves an unknown place in sight', () => {
  expect(fill('{a} of {b}', { a: 3 })).toBe('3 of {b}')
})
