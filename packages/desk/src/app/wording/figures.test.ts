import { describe, expect, it } from 'vitest'
import { placeOf } from './expected.ts'
import { aboutValue, figuresFor, isReadable } from './figures.ts'
import { isSnowSeason } from './snowSeason.ts'

const DAY = 20_515 // 2026-03-03, a Tuesday

describe('figuresFor', () => {
  it('an exact figure keeps every digit and adds none, but for the two decimals of inches', () => {
    const { exact } = figuresFor('en', 'mm')
    expect([470, 12.4, 0.25, 7.62].map(exact)).toEqual(['470 mm', '12.4 mm', '0.25 mm', '7.62 mm'])
    expect([25.4, 12.45, 3.175].map(figuresFor('en', 'in').exact)).toEqual(['1.00 in', '0.49 in', '0.125 in'])
    expect(figuresFor('es', 'mm').exact(12.4)).toBe('12,4 mm')
  })

  it('an estimate has two figures, and none finer than a gauge is read', () => {
    const { about } = figuresFor('en', 'mm')
    expect([0.04, 0.84, 8.26, 48.61, 126.3].map(about)).toEqual(['0 mm', '0.8 mm', '8.3 mm', '49 mm', '130 mm'])
    expect([0.1, 2.03, 20.3, 33.27].map(figuresFor('en', 'in').about)).toEqual(['0 in', '0.08 in', '0.80 in', '1.3 in'])
  })

  it('an amount typed in the other unit stands beside the network unit', () => {
    const say = figuresFor('en', 'in', 'mm')
    expect(say.typed('96.38', 96.38)).toBe('96.38 mm (3.79 in)')
    expect(say.own(7.2, 'about')).toBe('7.2 mm (0.28 in)')
    expect(figuresFor('es', 'mm').typed('1.250', 1.25)).toBe('1,250 mm')
  })

  it('what is not a plain figure is said by its amount', () => {
    expect(figuresFor('en', 'in').typed('1 1/4"', 31.75)).toBe('1.25 in')
  })

  it('days are written as the readers of each language and unit write them', () => {
    expect(figuresFor('en', 'mm').day(DAY)).toBe('Tuesday 3 March')
    expect(figuresFor('en', 'in').day(DAY)).toBe('Tuesday, March 3')
    expect(figuresFor('es', 'mm').day(DAY)).toBe('martes 3 de marzo')
    expect(figuresFor('en', 'mm').days(DAY - 2, DAY)).toBe('1 to 3 March')
    expect(figuresFor('en', 'in').days(DAY - 2, DAY)).toBe('March 1 to 3')
    expect(figuresFor('en', 'mm').days(DAY - 4, DAY)).toBe('27 February to 3 March')
    expect(figuresFor('es', 'mm').days(DAY - 2, DAY)).toBe('del 1 al 3 de marzo')
    expect(figuresFor('es', 'mm').days(DAY - 4, DAY)).toBe('del 27 de febrero al 3 de marzo')
  })

  it('no chance is ever called 0 % or 100 %', () => {
    const en = figuresFor('en', 'mm').percent
    expect([0, 0.0099, 0.724, 0.9901, 1].map(en)).toEqual([
      'less than 1 %',
      'less than 1 %',
      '72 %',
      'more than 99 %',
      'more than 99 %',
    ])
    expect(figuresFor('es', 'mm').percent(0.999)).toBe('más del 99 %')
  })
})

it('isReadable holds for what a gauge in the unit can show', () => {
  expect([12.4, 1.25, 4.496].map((mm) => isReadable(mm, 'mm'))).toEqual([true, false, false])
  expect([0.254, 12.45, 0.3].map((mm) => isReadable(mm, 'in'))).toEqual([true, true, false])
})

it('placeOf agrees with the figures that are said: what is said to be in the range is in it, and the reverse', () => {
  for (const unit of ['mm', 'in'] as const)
    for (let k = 0; k < 400; k++) {
      const lowMm = 0.13 * k
      const range = {
        leastMm: 0.6 * lowMm,
        lowMm,
        midMm: 1.7 * lowMm,
        highMm: 2.6 * lowMm + 0.07,
        mostMm: 4 * lowMm + 3,
        dryChance: 0.3,
      }
      const amountMm = ((k * 37) % 211) / 1.7
      const said = (mm: number) => aboutValue(mm, unit)
      const isInside = said(amountMm) >= said(range.lowMm) && said(amountMm) <= said(range.highMm)
      expect(placeOf(amountMm, range, unit) === 'within').toBe(isInside)
    }
})

it('a few drops on a dry day are never far more than expected', () => {
  const dry = { leastMm: 0, lowMm: 0, midMm: 0, highMm: 0, mostMm: 0, dryChance: 0.995 }
  expect([0.2, 1.9, 2].map((mm) => placeOf(mm, dry, 'mm'))).toEqual(['above', 'above', 'far above'])
})

it('snow is named in the cold half of the year, away from the tropics and the warm coasts', () => {
  const february = DAY - 20
  const july = DAY + 130
  expect([isSnowSeason(46.1, february), isSnowSeason(46.1, july)]).toEqual([true, false])
  expect([isSnowSeason(-43.5, february), isSnowSeason(-43.5, july)]).toEqual([false, true])
  expect([isSnowSeason(27.2, february), isSnowSeason(-24.8, july)]).toEqual([false, false])
})
