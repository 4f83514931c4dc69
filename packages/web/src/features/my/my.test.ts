/** The pure parts of the observer's page. */
import { observingDays } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { myWordsEn, myWordsEs } from '../../words/myWords.ts'
import { plainText, popDigit, pushDigit, reportText } from './amountText.ts'
import { askBack } from './askBack.ts'
import { entryDay, missedDays, readingsOf } from './entryDays.ts'
import { placeInGauge } from './placeInGauge.ts'

const type = (digits: string, unit: 'in' | 'mm') =>
  plainText(
    [...digits].reduce((places, digit) => pushDigit(places, Number(digit), unit), 0),
    unit,
  )
const inches = (value: number) => ({ amountUm: Math.round(value * 100) * 254, isTrace: false })

describe('typing', () => {
  it('fills places from the right, so that the point cannot be lost: 4, 40, 400', () => {
    expect(['4', '40', '400', '040', '0'].map((digits) => type(digits, 'in'))).toEqual([
      '0.04',
      '0.40',
      '4.00',
      '0.40',
      '0.00',
    ])
    expect(['4', '40', '123'].map((digits) => type(digits, 'mm'))).toEqual(['0.4', '4.0', '12.3'])
    expect(popDigit(123)).toBe(12)
  })

  it('takes no more digits than ten gauges could hold', () => {
    expect(type('99999999', 'in')).toBe('99.99')
  })

  it('says what the desk reads: nothing, trace, an amount, fills in the order poured', () => {
    expect(reportText('nothing', [], 0, 'in')).toBe('0')
    expect(reportText('trace', [], 0, 'in')).toBe('T')
    expect(reportText('amount', [], 40, 'in')).toBe('0.40')
    expect(reportText('amount', [100, 100], 34, 'in')).toBe('1.00 + 1.00 + 0.34')
    expect(reportText('amount', [100, 100], 0, 'in')).toBe('1.00 + 1.00')
  })
})

describe('where the water stands', () => {
  const place = (value: number) => placeInGauge(inches(value), 'in', 'en', myWordsEn)
  it('is said so that 4.00, 0.40 and 0.04 sound nothing alike', () => {
    expect(place(4)).toBe('4 full tubes')
    expect(place(0.4)).toBe('the fourth long line of the tube')
    expect(place(0.04)).toBe('the fourth small line of the tube')
    expect(place(0.47)).toBe('7 small lines above the fourth long line of the tube')
    expect(place(1.2)).toBe('one full tube and the second long line of the tube')
  })

  it('is said in Spanish and millimetres too', () => {
    expect(placeInGauge({ amountUm: 10_200, isTrace: false }, 'mm', 'es', myWordsEs)).toBe('la línea 10,2 mm del tubo')
    expect(placeInGauge({ amountUm: 0, isTrace: true }, 'mm', 'es', myWordsEs)).toBe(
      'gotas, por debajo de la primera línea',
    )
  })

  it('is what the page asks back about, the typed amount first', () => {
    const question = { alternatives: [{ kind: 'decimal' as const, amountUm: 10_160 }] }
    const ask = askBack(inches(4), question, 'in', 'en', myWordsEn)
    expect(ask.sentences.join(' ')).toBe(
      'You typed 4.00 in. Is the water up to 4 full tubes, or up to the fourth long line of the tube?',
    )
    expect(ask.choices.map(({ amountUm }) => amountUm)).toEqual([101_600, 10_160])
  })

  it('asks to look again, without naming an amount, where there is no other amount to name', () => {
    const question = { alternatives: [{ kind: 'false-zero' as const, amountUm: null }] }
    const ask = askBack({ amountUm: 0, isTrace: false }, question, 'in', 'en', myWordsEn)
    expect(ask.choices).toHaveLength(1)
    expect(ask.sentences).toContain(myWordsEn.ask.look['false-zero'])
  })
})

describe('the days of a report', () => {
  const answer = observingDays('UTC', '07:00')
  if (answer.kind === 'problem') throw new Error(answer.code)
  const network = {
    name: 'n',
    unit: 'in' as const,
    timeZone: 'UTC',
    readingTime: '07:00',
    acceptWindowMin: 90,
    language: 'en' as const,
  }
  const at = (utc: string) => entryDay(network, answer.days, Date.parse(utc))

  it('follow the network’s accept window', () => {
    const day = at('2026-05-31T07:00:00Z').day
    expect(at('2026-05-31T08:29:00Z')).toEqual({ day, timing: 'on time' })
    expect(at('2026-05-31T08:31:00Z')).toEqual({ day, timing: 'late' })
    expect(at('2026-05-31T05:00:00Z')).toEqual({ day, timing: 'early' })
    expect(at('2026-05-31T18:00:00Z')).toEqual({ day: day + 1, timing: 'off hour' })
  })

  const known = [{ firstDay: '2026-05-27', lastDay: '2026-05-27', text: '0' }]
  const day = at('2026-05-31T07:00:00Z').day
  let count = 0
  const newId = () => `id-${++count}`
  const entry = {
    day,
    missed: 3,
    readAtUtc: '2026-05-31T07:10:00Z',
    text: '0',
    unit: 'in' as const,
    remark: ' ',
    confirmed: null,
    corrects: null,
  }

  it('missed since the last reading are counted, but not those of a long pause', () => {
    expect(missedDays(known, day)).toBe(3)
    expect(missedDays([{ firstDay: '2026-03-01', lastDay: '2026-03-01', text: '0' }], day)).toBe(0)
    expect(missedDays([], day)).toBe(0)
  })

  it('are one total, or a dry reading for each with an id of its own, the read time only on the last', () => {
    const total = readingsOf({ ...entry, span: 'total' }, newId)
    expect(total).toMatchObject([{ firstDay: '2026-05-28', lastDay: '2026-05-31', remark: null }])
    const each = readingsOf({ ...entry, span: 'each' }, newId)
    expect(each.map(({ lastDay }) => lastDay)).toEqual(['2026-05-28', '2026-05-29', '2026-05-30', '2026-05-31'])
    expect(each.map(({ readAtUtc }) => readAtUtc)).toEqual([null, null, null, '2026-05-31T07:10:00Z'])
    expect(new Set(each.map(({ id }) => id)).size).toBe(4)
  })
})
